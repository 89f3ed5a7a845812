package witnessmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import witnessmark.badge.PrivateHalf;
import witnessmark.certificate.Certificate;
import witnessmark.certificate.Paper;
import witnessmark.certificate.Proved;
import witnessmark.cli.ProofDesk.Said;
import witnessmark.desk.CloseJob;
import witnessmark.desk.Dispose;
import witnessmark.desk.EnrolKey;
import witnessmark.entry.Disposition;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.entry.Signed;
import witnessmark.ledger.Bundle;
import witnessmark.ledger.Draft;
import witnessmark.ledger.Ledger.Appending;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.sqlite.SqliteLedger;
import witnessmark.ledger.sqlite.SqliteReading;
import witnessmark.pipeline.Bench;
import witnessmark.pipeline.Drafts;
import witnessmark.record.Gather;

/**
 * A decision in the name of a badge that holds a key, put into the log by somebody who holds the
 * log's key but not that person's: neither paper nor proof shows it as that person's.
 */
class FalselySignedTest {
  private static final PrivateHalf.Pair OWN = PrivateHalf.generate();
  private static final PrivateHalf.Pair STRANGE = PrivateHalf.generate();
  private static final String UNIT = "ATR-26-0147";

  /** How the disposition is signed. */
  private enum Kind {
    HONEST(0, "signed with the key of entry %d", ""),
    STRANGER(1, "SIGNATURE DOES NOT FIT the key of entry %d", "NOT SIGNED BY THAT PERSON: its sig"),
    UNSIGNED(
        1, "NOT SIGNED, though the key of entry %d was in force", "NOT SIGNED, though the key"),
    NO_KEY(
        1, "SIGNATURE DOES NOT FIT the key of entry 1", "NOT SIGNED BY THAT PERSON: entry 1 enr"),
    LATER_KEY(1, "SIGNATURE DOES NOT FIT the key of entry 9999", "entry 9999 enrols no key");

    private final int status;
    private final String recorded;
    private final String proved;

    Kind(int status, String recorded, String proved) {
      this.status = status;
      this.recorded = recorded;
      this.proved = proved;
    }
  }

  @TempDir private Path directory;
  private long key;
  private long decision;

  private String log(Kind kind) {
    Bench bench = Bench.on(Bench.group(2));
    key = bench.log().size();
    bench.person(new EnrolKey("badge-07", OWN.publicHalf().base64(), "badge-07"));
    bench.hitOn("a/1", "58.4 N.m");
    decision = bench.log().size();
    Optional<String> by = Optional.of("badge-07");
    bench.person(new Dispose(bench.jobName(), "a/1", Disposition.REPLACE, "badge-07", "new bolt"));
    bench.hitOn("a/1", "50.0 N.m");
    bench.hitOn("a/2", "50.0 N.m");
    bench.person(new CloseJob(bench.jobName(), by));
    LedgerFiles files = new LedgerFiles(directory.resolve("data"));
    try (SqliteLedger ledger = SqliteLedger.create(files);
        Appending txn = ledger.begin()) {
      List<Entry> entries = new ArrayList<>(bench.log());
      entries.set(0, new Entry.LogOpened(entries.get(0).at(), ledger.origin()));
      for (int n = 0; n < entries.size(); n++) {
        byte[] bytes = EntryJson.bytes(entries.get(n));
        if (n == key) {
          bytes = signed(bytes, ledger.origin(), n, key, OWN);
        } else if (n == decision) {
          bytes = decided(kind, bytes, ledger.origin());
        }
        Draft draft = Drafts.of(entries.get(n));
        txn.append(new Draft(bytes, draft.trace(), draft.job()));
      }
      txn.commit();
    }
    return "--data=" + files.directory();
  }

  private byte[] decided(Kind kind, byte[] bytes, String origin) {
    return switch (kind) {
      case HONEST -> signed(bytes, origin, decision, key, OWN);
      case STRANGER -> signed(bytes, origin, decision, key, STRANGE);
      case UNSIGNED -> bytes;
      case NO_KEY -> signed(bytes, origin, decision, 1, OWN);
      case LATER_KEY -> signed(bytes, origin, decision, 9999, OWN);
    };
  }

  private static byte[] signed(
      byte[] bytes, String origin, long n, long key, PrivateHalf.Pair pair) {
    byte[] naming = Signed.naming(bytes, key);
    return Signed.with(naming, pair.privateHalf().sign(Signed.text(origin, n, naming)));
  }

  private String pub() {
    return "--key=" + directory.resolve("data/ledger.pub");
  }

  @ParameterizedTest
  @EnumSource(Kind.class)
  void theRecordSaysWhetherTheSignatureFits(Kind kind) {
    String data = log(kind);
    String expected = String.format(kind.recorded, key);
    String text = ProofDesk.done("trace", "--unit=" + UNIT, "--record", data).out();
    assertThat(text.replaceAll("\\s+", " ")).contains("(" + expected + ")");
    String json = ProofDesk.done("trace", "--unit=" + UNIT, "--record", "--json", data).out();
    String code =
        switch (kind) {
          case HONEST -> "fits";
          case UNSIGNED -> "lacking";
          default -> "does-not-fit";
        };
    assertThat(json.replaceAll("\\s", "")).contains("\"signature\":\"" + code + "\"");
  }

  @ParameterizedTest
  @EnumSource(Kind.class)
  void aBundleOrCertificateOfAnotherMakerIsNotProved(Kind kind) throws IOException {
    log(kind);
    for (Path file : List.of(bundle(), certificate())) {
      Said said = ProofDesk.say("ledger", "check-proof", file.toString(), pub());
      assertThat(said.status()).as(said.toString()).isEqualTo(kind.status);
      String flat = said.out().replaceAll("\\s+", " ");
      if (kind == Kind.HONEST) {
        assertThat(flat)
            .startsWith("Proved: ")
            .contains(
                "Entry "
                    + decision
                    + ", by badge-07: signed with the person's key, of entry "
                    + key);
      } else {
        assertThat(flat)
            .startsWith("FALSELY SIGNED: ")
            .contains("Entry " + decision + ", by badge-07: ")
            .contains(kind.proved);
      }
      Said json = ProofDesk.say("ledger", "check-proof", file.toString(), pub(), "--json");
      assertThat(json.out().replaceAll("\\s", ""))
          .contains("\"verdict\":\"" + (kind.status == 0 ? "proved" : "falsely-signed") + "\"");
    }
  }

  @ParameterizedTest
  @EnumSource(Kind.class)
  void noneIsMadeOfSuchALog(Kind kind) {
    String data = log(kind);
    String pdf = directory.resolve("u.pdf").toString();
    String json = directory.resolve("u.json").toString();
    for (Said said :
        List.of(
            ProofDesk.say("trace", "--unit=" + UNIT, "--certificate", pdf, data),
            ProofDesk.say("ledger", "prove", "--unit=" + UNIT, "--out", json, data))) {
      assertThat(said.status()).as(said.toString()).isEqualTo(kind.status == 0 ? 0 : 4);
      if (kind != Kind.HONEST) {
        assertThat(said.err())
            .contains("is written: a decision is not signed by the key of the person it names.")
            .contains("Entry " + decision)
            .contains(kind.proved)
            .contains("witnessmark ledger verify");
      }
    }
    assertThat(Files.exists(Path.of(pdf))).isEqualTo(kind == Kind.HONEST);
    assertThat(Files.exists(Path.of(json))).isEqualTo(kind == Kind.HONEST);
  }

  @Test
  void anHonestBundleCarriesTheKeysOfItsDecisionsAndTheirEnrolments() {
    String data = log(Kind.HONEST);
    String out = directory.resolve("u.json").toString();
    ProofDesk.done("ledger", "prove", "--unit=" + UNIT, "--out", out, data);
    String said = ProofDesk.done("ledger", "check-proof", out, pub(), "--entries").out();
    assertThat(said)
        .doesNotContain("is not among these entries")
        .contains("\"kind\":\"operator-key-enrolled\"")
        .contains("\"kind\":\"operator-enrolled\"");
  }

  @Test
  void aJobsBundleWithoutTheKeyOfItsDecisionIsNotWhole() throws IOException {
    log(Kind.HONEST);
    Path file =
        write(
            "short.json",
            bundle(
                reading -> {
                  List<Long> entries = new ArrayList<>(gathered(reading));
                  entries.remove(key);
                  return entries;
                }));
    Said said = ProofDesk.say("ledger", "check-proof", file.toString(), pub());
    assertThat(said.status()).isEqualTo(1);
    assertThat(said.out())
        .startsWith("ENTRIES ARE MISSING: keys that decisions are signed with are not here.")
        .contains("the key of entry " + key + " is not among these");
  }

  private Path bundle() throws IOException {
    return write("bundle.json", bundle(FalselySignedTest::gathered));
  }

  private static List<Long> gathered(SqliteReading reading) {
    return new ArrayList<>(Gather.of(reading, Optional.of(UNIT), Optional.empty()).keySet());
  }

  private byte[] bundle(java.util.function.Function<SqliteReading, List<Long>> entries) {
    try (SqliteReading reading = SqliteReading.open(new LedgerFiles(directory.resolve("data")))) {
      return Bundle.of(reading, entries.apply(reading));
    }
  }

  private Path certificate() throws IOException {
    try (SqliteReading reading = SqliteReading.open(new LedgerFiles(directory.resolve("data")))) {
      var entries = Gather.of(reading, Optional.of(UNIT), Optional.empty());
      Proved proved = Proved.of(entries, Bundle.of(reading, new ArrayList<>(entries.keySet())));
      return write("u2.pdf", Certificate.render(proved, Paper.A4, Version.program()));
    }
  }

  private Path write(String name, byte[] bytes) throws IOException {
    return Files.write(directory.resolve(name), bytes);
  }
}
