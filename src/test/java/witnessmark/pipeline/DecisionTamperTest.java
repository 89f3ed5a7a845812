package witnessmark.pipeline;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import witnessmark.badge.SmallOrder;
import witnessmark.entry.Disposition;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.entry.Role;
import witnessmark.entry.Signed;
import witnessmark.ledger.Ledger.Appending;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.sqlite.SqliteLedger;

/**
 * What somebody who holds the log's key, and so can write any log that hangs together, cannot do:
 * decide in the name of a person whose key he has not.
 */
class DecisionTamperTest extends SignedDecisions {
  @Test
  void theSameEntriesVerifyInALogOfTheSameName() throws IOException {
    assertThat(rewritten("same", honest)).isEmpty();
    assertThat(honest.stream().filter(b -> Signed.key(b).isPresent())).hasSize(8);
  }

  @Test
  void aDecisionChangedIsNamed() throws IOException {
    int n = entry("\"because\":\"fell\"");
    assertThat(rewritten("changed", with(n, e -> e.replace("fell", "worn"))))
        .containsExactly(
            "entry "
                + n
                + ": its signature is not that of the key over this entry, at this place of this"
                + " log");
  }

  @Test
  void aSignatureTakenAwayIsNamedInEverySignedEntry() throws IOException {
    for (int n = 0; n < honest.size(); n++) {
      if (Signed.key(honest.get(n)).isPresent()) {
        assertThat(rewritten("bare" + n, with(n, DecisionTamperTest::unsigned)))
            .as(new String(honest.get(n), UTF_8))
            .singleElement()
            .asString()
            .startsWith("entry " + n + ": not signed, though \"badge-1")
            .matches(".*decides with the key of entry (" + key + "|[0-9]+)");
      }
    }
  }

  @Test
  void aSignatureCopiedToAnotherEntryIsNamed() throws IOException {
    int from = entry("\"because\":\"fell\"");
    String signature = new String(honest.get(from), UTF_8).replaceAll(".*(,\"key\":.*)$", "$1");
    int to = entry("\"because\":\"left the shop\"");
    List<byte[]> entries = with(to, e -> e.replaceAll(",\"key\":.*$", signature));
    assertThat(rewritten("copied", entries))
        .singleElement()
        .asString()
        .startsWith("entry " + to + ": its signature is not that of the key");
  }

  @Test
  void aDecisionRepeatedAtAnotherPlaceIsNamed() throws IOException {
    List<byte[]> entries = new ArrayList<>(honest);
    entries.add(honest.get(entry("\"because\":\"fell\"")));
    assertThat(rewritten("again", entries))
        .singleElement()
        .asString()
        .startsWith("entry " + honest.size() + ": its signature is not that of the key");
  }

  @Test
  void aDecisionCarriedIntoAnotherLogIsNamed() throws IOException {
    LedgerFiles files = new LedgerFiles(directory.resolve("other"));
    try (SqliteLedger other = SqliteLedger.create(files);
        Appending txn = other.begin()) {
      honest.forEach(b -> txn.append(Drafts.of(EntryJson.read(b), b)));
      txn.commit();
      assertThat(findings(files, other.origin()))
          .hasSize(8)
          .allMatch(f -> f.contains(": its signature is not that of the key"));
    }
  }

  @Test
  void anotherBadgeOrNoneDoesNotHelp() throws IOException {
    int n = entry("\"kind\":\"procedure-released\"");
    String must = "not signed by anybody's key, as it must be since a quality badge holds one";
    assertThat(rewritten("by", with(n, e -> unsigned(e).replace("badge-11", "badge-07"))))
        .containsExactly("entry " + n + ": " + must);
    assertThat(rewritten("none", with(n, e -> unsigned(e).replace(",\"by\":\"badge-11\"", ""))))
        .containsExactly("entry " + n + ": " + must);
    assertThat(
            rewritten(
                "false", with(n, e -> e.replace("\"by\":\"badge-11\"", "\"by\":\"badge-07\""))))
        .containsExactly("entry " + n + ": " + must);
  }

  @Test
  void whoIsNotQualityCannotEnrolAnybodyEvenWithAKey() throws IOException {
    List<byte[]> entries = new ArrayList<>(honest.subList(0, entry("\"kind\":\"wrench-bound\"")));
    long n = entries.size();
    Entry enrolled =
        new Entry.OperatorEnrolled(
            now, "badge-12", "x", List.of(Role.QUALITY), Optional.of("badge-12"));
    byte[] naming =
        Signed.naming(EntryJson.bytes(enrolled), entry("\"operator\":\"badge-12\",\"public"));
    byte[] signature = OTHER.privateHalf().sign(Signed.text(ledger.origin(), n, naming));
    entries.add(Signed.with(naming, signature));
    assertThat(rewritten("quality", entries))
        .containsExactly(
            "entry "
                + n
                + ": not decided by quality with a key, as it must be since one is enrolled");
  }

  @Test
  void aDispositionThatTakesMoreThanATechnicianIsSigned() throws IOException {
    List<byte[]> entries = new ArrayList<>(honest);
    long n = entries.size();
    String job = "J-" + entry("\"kind\":\"job-opened\"");
    entries.add(EntryJson.bytes(disposed(job, Role.SECOND)));
    entries.add(EntryJson.bytes(disposed(job, Role.TECHNICIAN)));
    assertThat(rewritten("disposed", entries))
        .containsExactly(
            "entry "
                + n
                + ": decided by \"badge-07\" as second, which that badge is not enrolled as",
            "entry "
                + n
                + ": not signed by anybody's key, as it must be since a quality badge holds one");
  }

  private Entry disposed(String job, Role role) {
    return new Entry.Disposed(
        now,
        job,
        "a/1",
        9,
        Disposition.REPLACE,
        List.of(),
        "badge-07",
        Optional.of(role),
        Optional.empty(),
        "seen");
  }

  @Test
  void aKeyThatWasWithdrawnSignsNothingMore() throws IOException {
    List<byte[]> entries = new ArrayList<>(honest);
    long n = entries.size();
    Entry bound = new Entry.WrenchBound(now, "TW-1", List.of(), "badge-12");
    byte[] naming =
        Signed.naming(EntryJson.bytes(bound), entry("\"operator\":\"badge-12\",\"public"));
    entries.add(
        Signed.with(naming, OTHER.privateHalf().sign(Signed.text(ledger.origin(), n, naming))));
    assertThat(rewritten("withdrawn", entries))
        .singleElement()
        .asString()
        .startsWith("entry " + n + ": not signed by anybody's key");
  }

  @Test
  void aKeyForWhichAnybodyCanSignIsNamedWhoeverEnrolledIt() throws IOException {
    for (byte[] none : SmallOrder.all()) {
      List<byte[]> entries = new ArrayList<>(honest);
      long n = entries.size();
      String publicKey = SmallOrder.base64(none);
      Entry enrolled = new Entry.OperatorKeyEnrolled(now, "badge-12", publicKey, "badge-11");
      byte[] naming = Signed.naming(EntryJson.bytes(enrolled), key);
      entries.add(
          Signed.with(naming, QUALITY.privateHalf().sign(Signed.text(ledger.origin(), n, naming))));
      String name = "small" + java.util.HexFormat.of().formatHex(none);
      assertThat(rewritten(name, entries))
          .as(publicKey)
          .containsExactly(
              "entry "
                  + n
                  + ": enrols what is no Ed25519 public key that only its holder can sign for");
    }
  }
}
