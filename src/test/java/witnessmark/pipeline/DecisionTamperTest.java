package witnessmark.pipeline;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.badge.PrivateHalf;
import witnessmark.badge.SmallOrder;
import witnessmark.desk.BindWrench;
import witnessmark.desk.CheckWrench;
import witnessmark.desk.Command;
import witnessmark.desk.EnrolKey;
import witnessmark.desk.EnrolOperator;
import witnessmark.desk.EnrolWrench;
import witnessmark.desk.OpenJob;
import witnessmark.desk.Release;
import witnessmark.desk.RetireWrench;
import witnessmark.desk.Tried;
import witnessmark.desk.WithdrawKey;
import witnessmark.entry.Disposition;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.entry.Role;
import witnessmark.entry.Signed;
import witnessmark.ledger.Ledger.Appending;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.Stored;
import witnessmark.ledger.sqlite.RawReader;
import witnessmark.ledger.sqlite.SqliteLedger;
import witnessmark.ledger.sqlite.SqliteReading;
import witnessmark.ledger.verify.Report;
import witnessmark.ledger.verify.Verifier;
import witnessmark.procedure.ProcedureFile;
import witnessmark.torque.Torque;

/**
 * What somebody who holds the log's key, and so can write any log that hangs together, cannot do:
 * decide in the name of a person whose key he has not.
 */
class DecisionTamperTest {
  private static final PrivateHalf.Pair QUALITY = PrivateHalf.generate();
  private static final PrivateHalf.Pair OTHER = PrivateHalf.generate();
  private static final Optional<String> BY = Optional.of("badge-11");
  private static final Optional<String> NOBODY = Optional.empty();

  @TempDir private Path directory;
  private SqliteLedger ledger;
  private Instant now = Bench.START;
  private List<byte[]> honest;
  private long key;

  @BeforeEach
  void aLogOfDecisions() throws IOException {
    LedgerFiles files = new LedgerFiles(directory.resolve("honest"));
    ledger = SqliteLedger.create(files);
    Journal journal = new Journal(ledger);
    journal.note(new Entry.LogOpened(now, ledger.origin()));
    enrol(journal, "badge-07", NOBODY, Role.TECHNICIAN);
    enrol(journal, "badge-11", NOBODY, Role.QUALITY);
    key = decide(journal, QUALITY, new EnrolKey("badge-11", half(QUALITY), "badge-11"));
    enrol(journal, "badge-12", BY, Role.TECHNICIAN);
    decide(journal, QUALITY, new EnrolKey("badge-12", half(OTHER), "badge-11"));
    decide(journal, QUALITY, wrench());
    decide(journal, OTHER, new BindWrench("TW-1", List.of(), "badge-12"));
    String text = Bench.group(2);
    decide(journal, QUALITY, new Release(ProcedureFile.parse("t.toml", text), text, BY));
    decide(journal, QUALITY, new OpenJob("P-1", NOBODY, "ATR-26-0147", "bench-1", NOBODY));
    Torque fifty = Torque.parse("50 N.m");
    Tried off = new Tried(fifty, List.of(Torque.parse("60 N.m")));
    decide(journal, QUALITY, new CheckWrench("TW-1", "tester-1", List.of(off), "badge-11"));
    decide(journal, QUALITY, new RetireWrench("TW-1", "badge-11", "fell"));
    decide(journal, QUALITY, new WithdrawKey("badge-12", "badge-11", "left the shop"));
    ledger.close();
    honest = new ArrayList<>();
    try (SqliteReading reading = SqliteReading.open(files)) {
      reading.from(0, 100).stream().map(Stored::bytes).forEach(honest::add);
    }
    assertThat(findings(files, ledger.origin())).isEmpty();
  }

  private static EnrolWrench wrench() {
    EnrolWrench w = Bench.wrench("TW-1");
    return new EnrolWrench(
        w.serial(),
        w.low(),
        w.high(),
        w.calibrated(),
        w.due(),
        w.certificate(),
        w.uncertainty(),
        BY);
  }

  private static String half(PrivateHalf.Pair pair) {
    return pair.publicHalf().base64();
  }

  private void enrol(Journal journal, String badge, Optional<String> by, Role role) {
    decide(journal, QUALITY, new EnrolOperator(badge, Optional.empty(), List.of(role), by));
  }

  private long decide(Journal journal, PrivateHalf.Pair pair, Command command) {
    now = now.plusSeconds(5);
    return journal.carryOut(command, now, Optional.of(pair.privateHalf()::sign));
  }

  private List<String> findings(LedgerFiles files, String origin) throws IOException {
    String pub = Files.readString(files.verifier());
    assertThat(pub).startsWith(origin);
    try (RawReader raw = RawReader.open(files.database())) {
      Report report = Verifier.verify(raw, pub);
      return report.findings().stream().map(Object::toString).toList();
    }
  }

  /** The same log with other entries, signed as a log by its own key: nothing else is wrong. */
  private List<String> rewritten(String name, List<byte[]> entries) throws IOException {
    LedgerFiles files = new LedgerFiles(directory.resolve(name));
    Files.createDirectories(files.directory());
    SqliteLedger.create(files).close();
    // the holder of the log's key signs with that: the same origin and key as before
    for (String file : List.of("ledger.key", "ledger.pub")) {
      Files.copy(
          directory.resolve("honest").resolve(file),
          files.directory().resolve(file),
          StandardCopyOption.REPLACE_EXISTING);
    }
    try (SqliteLedger forged = SqliteLedger.open(files);
        Appending txn = forged.begin()) {
      for (byte[] bytes : entries) {
        txn.append(Drafts.of(EntryJson.read(bytes), bytes));
      }
      txn.commit();
      return findings(files, forged.origin());
    }
  }

  private int entry(String containing) {
    for (int n = 0; n < honest.size(); n++) {
      if (new String(honest.get(n), UTF_8).contains(containing)) {
        return n;
      }
    }
    throw new AssertionError(containing);
  }

  private List<byte[]> with(int n, UnaryOperator<String> change) {
    List<byte[]> entries = new ArrayList<>(honest);
    String before = new String(entries.get(n), UTF_8);
    String after = change.apply(before);
    assertThat(after).isNotEqualTo(before);
    entries.set(n, after.getBytes(UTF_8));
    return entries;
  }

  private static String unsigned(String entry) {
    return entry.replaceAll(",\"key\":[0-9]+,\"signature\":\"[^\"]*\"", "");
  }

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

  private List<String> disposed(String name, String entry) throws IOException {
    List<byte[]> entries = new ArrayList<>(honest);
    long n = entries.size();
    String at = ",\"v\":1,\"at\":\"2026-11-25T10:00:00Z\",";
    String json = entry.replaceFirst("^\\{\"kind\":\"([a-z-]+)\",", "{\"kind\":\"$1\"" + at);
    entries.add(json.getBytes(UTF_8));
    return raw(name, entries).stream()
        .map(f -> f.replace("entry " + n + ": ", ""))
        .filter(f -> !f.startsWith("not signed by anybody's key"))
        .toList();
  }

  /** The same log with an entry that the program's own reader may not take. */
  private List<String> raw(String name, List<byte[]> entries) throws IOException {
    LedgerFiles files = new LedgerFiles(directory.resolve(name));
    Files.createDirectories(files.directory());
    SqliteLedger.create(files).close();
    for (String file : List.of("ledger.key", "ledger.pub")) {
      Files.copy(
          directory.resolve("honest").resolve(file),
          files.directory().resolve(file),
          StandardCopyOption.REPLACE_EXISTING);
    }
    try (SqliteLedger forged = SqliteLedger.open(files);
        Appending txn = forged.begin()) {
      for (int n = 0; n < entries.size(); n++) {
        byte[] bytes = entries.get(n);
        txn.append(
            n < honest.size() ? Drafts.of(EntryJson.read(bytes), bytes) : Forged.draft(bytes));
      }
      txn.commit();
      return findings(files, forged.origin());
    }
  }

  private static final String DISPOSED =
      "{\"kind\":\"disposed\",\"job\":\"J-9\",\"fastener\":\"a/1\",\"nonconformity\":11,"
          + "\"disposition\":\"use-as-is\",\"by\":\"badge-07\",\"because\":\"x\","
          + "\"role\":\"technician\"}";

  @Test
  void aReleaseInTooLowARoleIsNamed() throws IOException {
    assertThat(disposed("low", DISPOSED))
        .containsExactly("use-as-is is decided as technician, which only quality may");
    assertThat(disposed("scrap", DISPOSED.replace("use-as-is", "scrap")))
        .containsExactly("scrap is decided as technician, which only quality may");
    assertThat(disposed("rework", DISPOSED.replace("use-as-is", "rework"))).isEmpty();
  }

  @Test
  void aRoleThatTheBadgeIsNotEnrolledAsIsNamed() throws IOException {
    assertThat(disposed("lent", DISPOSED.replace("technician", "second")))
        .containsExactly("decided by \"badge-07\" as second, which that badge is not enrolled as");
    assertThat(disposed("nobody", DISPOSED.replace("badge-07", "badge-99")))
        .containsExactly(
            "decided by \"badge-99\" as technician, which that badge is not enrolled as");
    assertThat(disposed("none", DISPOSED.replace(",\"role\":\"technician\"", "")))
        .containsExactly("says in no role that \"badge-07\" decided, as it must");
  }

  @Test
  void aMemberThatEveryEntryOfTheKindHasIsMissed() throws IOException {
    assertThat(disposed("by", DISPOSED.replace("\"by\":\"badge-07\",", "")))
        .containsExactly("has no text /by, as every disposed has");
    assertThat(disposed("type", DISPOSED.replace(":11,", ":\"11\",")))
        .containsExactly("has no number /nonconformity, as every disposed has");
    assertThat(disposed("word", DISPOSED.replace("use-as-is", "paint")))
        .containsExactly("its /disposition is \"paint\", which is no such word");
    assertThat(disposed("attested", "{\"kind\":\"attested\",\"job\":\"J-9\",\"step\":\"a\"}"))
        .containsExactly("has no text /by, as every attested has");
    assertThat(disposed("unknown", "{\"kind\":\"weather-noted\",\"job\":\"J-9\"}")).isEmpty();
  }
}
