package witnessmark.ledger.sqlite;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.entry.Entry;
import witnessmark.ledger.KeyChange;
import witnessmark.ledger.LedgerException;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.LogKey;
import witnessmark.ledger.verify.Verifier;
import witnessmark.pipeline.Journal;

/** The key of a log changed while others have it open, and cut short at every step. */
class KeyChangeTest {
  private static final Instant AT = Instant.parse("2026-11-25T10:00:00.000Z");

  @TempDir private Path directory;
  private LedgerFiles files;
  private String shop;

  @BeforeEach
  void begin() throws IOException {
    files = new LedgerFiles(directory.resolve("data"));
    try (SqliteLedger ledger = SqliteLedger.create(files)) {
      new Journal(ledger).note(new Entry.LogOpened(AT, ledger.origin()));
    }
    shop = Files.readString(files.verifier());
  }

  private Path file(String name) {
    return files.directory().resolve(name);
  }

  private static void add(Journal journal) {
    journal.note(
        new Entry.OperatorEnrolled(AT, "badge-07", "first bench", List.of(), Optional.empty()));
  }

  private void addAnew() {
    try (SqliteLedger ledger = SqliteLedger.open(files)) {
      add(new Journal(ledger));
    }
  }

  /** Changes the key up to the commit, and leaves the files as a crash there would. */
  private LogKey commitOnly() {
    try (KeyChange change = KeyChange.begin(files);
        SqliteLedger ledger = SqliteLedger.open(files)) {
      Journal journal = new Journal(ledger);
      LogKey next = change.next(ledger.key());
      journal.handOver(next, AT);
      return next;
    }
  }

  private LogKey change() {
    LogKey next = commitOnly();
    try (KeyChange change = KeyChange.begin(files)) {
      change.install(next);
    }
    return next;
  }

  private void verifies(int entries) throws IOException {
    for (String key : List.of(shop, Files.readString(files.verifier()))) {
      try (RawReader raw = RawReader.open(files.database())) {
        var report = Verifier.verify(raw, key);
        assertThat(report.findings()).isEmpty();
        assertThat(report.size()).isEqualTo(entries);
      }
    }
  }

  private void finished(LogKey key) throws IOException {
    assertThat(Files.readString(files.verifier())).isEqualTo(key.verifierLine() + "\n");
    assertThat(Files.readString(file("ledger.key"))).isEqualTo(key.pem());
    try (Stream<Path> all = Files.list(files.directory())) {
      assertThat(all.map(f -> f.getFileName().toString())).noneMatch(f -> f.endsWith(".next"));
    }
  }

  @Test
  void whoeverHasTheLogOpenGoesOnWithTheNewKey() throws IOException {
    try (SqliteLedger open = SqliteLedger.open(files)) {
      Journal journal = new Journal(open);
      add(journal);
      change();
      add(journal);
      add(journal);
      change();
      add(journal);
    }
    verifies(7);
  }

  @Test
  void whoeverHasItOpenGoesOnAlsoBeforeTheFilesAreInPlace() throws IOException {
    try (SqliteLedger open = SqliteLedger.open(files)) {
      Journal journal = new Journal(open);
      LogKey next = commitOnly();
      add(journal);
      finished(next);
    }
    verifies(3);
  }

  @Test
  void cutShortBeforeTheCommitTheOldKeyGoesOn() throws IOException {
    try (KeyChange change = KeyChange.begin(files);
        SqliteLedger ledger = SqliteLedger.open(files)) {
      change.next(ledger.key());
    }
    addAnew();
    assertThat(Files.readString(files.verifier())).isEqualTo(shop);
    verifies(2);
    LogKey next = change();
    addAnew();
    finished(next);
    verifies(4);
  }

  @Test
  void cutShortAfterTheCommitTheNextToOpenTheLogFinishes() throws IOException {
    LogKey next = commitOnly();
    verifies(2);
    addAnew();
    finished(next);
    verifies(3);
  }

  @Test
  void cutShortBetweenTheFilesTheNextToOpenTheLogFinishes() throws IOException {
    LogKey next = commitOnly();
    Files.move(file("ledger.pub.next"), files.verifier(), StandardCopyOption.REPLACE_EXISTING);
    verifies(2);
    addAnew();
    finished(next);
    LogKey after = commitOnly();
    Files.move(file("ledger.pub.next"), files.verifier(), StandardCopyOption.REPLACE_EXISTING);
    Files.write(file("ledger.key"), new byte[119]);
    addAnew();
    finished(after);
    verifies(5);
  }

  @Test
  void aNextChangeFinishesTheOneThatWasCutShort() throws IOException {
    commitOnly();
    LogKey next = change();
    addAnew();
    finished(next);
    verifies(4);
  }

  @Test
  void theNextChangeNeverRisksTheOnlyCopyOfTheKeyThatSigns() throws IOException {
    LogKey signs = commitOnly();
    try (KeyChange change = KeyChange.begin(files);
        SqliteLedger ledger = SqliteLedger.open(files)) {
      change.next(ledger.key());
      assertThat(Files.readString(file("ledger.key"))).isEqualTo(signs.pem());
    }
    addAnew();
    verifies(3);
  }

  @Test
  void aNextKeyThatWasTamperedWithSignsNothing() throws IOException {
    commitOnly();
    LogKey thief = LogKey.generate(shop.substring(0, shop.indexOf('+')));
    Files.writeString(file("ledger.key.next"), thief.pem());
    Files.writeString(file("ledger.pub.next"), thief.verifierLine());
    assertThatThrownBy(this::addAnew)
        .isInstanceOf(LedgerException.class)
        .hasMessageContaining("is not as it was signed");
    assertThat(Files.readString(files.verifier())).isEqualTo(shop);
    verifies(2);
  }

  @Test
  void oneChangeAtATime() {
    try (KeyChange change = KeyChange.begin(files)) {
      assertThatThrownBy(() -> KeyChange.begin(files))
          .isInstanceOf(LedgerException.class)
          .hasMessageContaining("is being changed by another process. Wait until it has ended.");
      assertThat(change).isNotNull();
    }
  }

  @Test
  void aCrashWithinTheTransactionLeavesTheOldKey() throws IOException {
    try (KeyChange change = KeyChange.begin(files);
        SqliteLedger ledger = SqliteLedger.open(files)) {
      LogKey next = change.next(ledger.key());
      new Journal(ledger);
      try (var txn = ledger.begin()) {
        assertThat(txn.handOver(next).to()).isEqualTo(next.verifierLine());
      }
      add(new Journal(ledger));
    }
    verifies(2);
    assertThat(Files.readString(files.verifier())).isEqualTo(shop);
  }
}
