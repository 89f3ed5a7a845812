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
import org.junit.jupiter.api.io.TempDir;
import witnessmark.badge.PrivateHalf;
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
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.entry.Role;
import witnessmark.ledger.Draft;
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

/** A log of decisions, and the same log forged by somebody who holds its key. */
abstract class SignedDecisions {
  static final PrivateHalf.Pair QUALITY = PrivateHalf.generate();
  static final PrivateHalf.Pair OTHER = PrivateHalf.generate();
  static final Optional<String> BY = Optional.of("badge-11");
  static final Optional<String> NOBODY = Optional.empty();

  @TempDir Path directory;
  SqliteLedger ledger;
  Instant now = Bench.START;
  List<byte[]> honest;
  long key;

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

  static EnrolWrench wrench() {
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

  static String half(PrivateHalf.Pair pair) {
    return pair.publicHalf().base64();
  }

  void enrol(Journal journal, String badge, Optional<String> by, Role role) {
    decide(journal, QUALITY, new EnrolOperator(badge, Optional.empty(), List.of(role), by));
  }

  long decide(Journal journal, PrivateHalf.Pair pair, Command command) {
    now = now.plusSeconds(5);
    return journal.carryOut(command, now, Optional.of(pair.privateHalf()::sign));
  }

  List<String> findings(LedgerFiles files, String origin) throws IOException {
    String pub = Files.readString(files.verifier());
    assertThat(pub).startsWith(origin);
    try (RawReader raw = RawReader.open(files.database())) {
      Report report = Verifier.verify(raw, pub);
      return report.findings().stream().map(Object::toString).toList();
    }
  }

  /** The same log with other entries, signed as a log by its own key: nothing else is wrong. */
  List<String> rewritten(String name, List<byte[]> entries) throws IOException {
    return forged(name, entries.stream().map(SignedDecisions::draft).toList());
  }

  /** The same log with entries at its end that the program's own reader may not take. */
  List<String> raw(String name, List<byte[]> entries) throws IOException {
    List<Draft> drafts = new ArrayList<>();
    for (byte[] bytes : entries) {
      drafts.add(drafts.size() < honest.size() ? draft(bytes) : Forged.draft(bytes));
    }
    return forged(name, drafts);
  }

  private static Draft draft(byte[] bytes) {
    return Drafts.of(EntryJson.read(bytes), bytes);
  }

  private List<String> forged(String name, List<Draft> drafts) throws IOException {
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
      drafts.forEach(txn::append);
      txn.commit();
      return findings(files, forged.origin());
    }
  }

  int entry(String containing) {
    for (int n = 0; n < honest.size(); n++) {
      if (new String(honest.get(n), UTF_8).contains(containing)) {
        return n;
      }
    }
    throw new AssertionError(containing);
  }

  List<byte[]> with(int n, UnaryOperator<String> change) {
    List<byte[]> entries = new ArrayList<>(honest);
    String before = new String(entries.get(n), UTF_8);
    String after = change.apply(before);
    assertThat(after).isNotEqualTo(before);
    entries.set(n, after.getBytes(UTF_8));
    return entries;
  }

  static String unsigned(String entry) {
    return entry.replaceAll(",\"key\":[0-9]+,\"signature\":\"[^\"]*\"", "");
  }
}
