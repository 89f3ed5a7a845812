package witnessmark.ledger.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.Statement;
import org.junit.jupiter.api.Test;
import witnessmark.ledger.sqlite.RawReader;

class RawReaderTest extends LedgerTest {
  @Test
  void aMissingFileIsRefusedAndNotMade() {
    Path file = directory.resolve("ledger.db");
    refused(
        file,
        "no ledger at "
            + file
            + ": expected the file ledger.db that the bridge made; check the data directory or"
            + " put a backup in its place with witnessmark ledger restore");
    assertThat(file).doesNotExist();
  }

  @Test
  void aFileThatIsNoDatabaseIsRefused() throws Exception {
    Path file = directory.resolve("ledger.db");
    for (String content :
        new String[] {"", "SQLite", "not a database, but long enough to be one"}) {
      Files.writeString(file, content);
      refused(
          file,
          file
              + " is not a database: it does not begin with \"SQLite format 3\"; restore the ledger"
              + " from a backup");
    }
  }

  @Test
  void aDatabaseOfAnotherProgramIsRefused() throws Exception {
    LedgerFile other = new LedgerFile(directory.resolve("other.db"));
    other.tamper("CREATE TABLE recipe (name TEXT)");
    refused(
        other.file(),
        other.file()
            + " is a database but not a ledger: expected application_id 1465142593 and a table"
            + " entry; name the bridge's ledger.db");
  }

  @Test
  void aNewerFormatIsRefused() throws Exception {
    LedgerFile ledger = ledger(3);
    ledger.tamper("PRAGMA user_version = 2");
    refused(
        ledger.file(),
        ledger.file()
            + " has format version 2, this program reads version 1; use the version of the program"
            + " that made it, or a newer one");
  }

  @Test
  void aPathMayHoldWhatAUrlWouldTakeForItsOwn() throws Exception {
    Path odd = Files.createDirectory(directory.resolve("bench 1?mode=x#50%20+ü"));
    LedgerFile ledger = ledger(5);
    Path moved = Files.move(ledger.file(), odd.resolve("ledger.db"));
    assertThat(verify(new LedgerFile(moved)).size()).isEqualTo(5);
  }

  @Test
  void whatIsAppendedAfterOpeningIsNotSeen() throws Exception {
    LedgerFile ledger = ledger(300);
    try (RawReader reader = RawReader.open(ledger.file())) {
      ledger.tamper("INSERT INTO entry VALUES (300, x'00', x'00')");
      ledger.tamper("DELETE FROM checkpoint");
      assertThat(Verifier.verify(new Loose(reader), ledger.key().verifierKey()).findings())
          .isEmpty();
    }
    assertThat(verify(ledger).findings()).isNotEmpty();
  }

  @Test
  void aWriterInTheMiddleOfATransactionIsNotWaitedFor() throws Exception {
    LedgerFile ledger = ledger(300);
    try (Connection bridge = ledger.connect();
        Statement statement = bridge.createStatement()) {
      statement.execute("BEGIN IMMEDIATE");
      statement.execute("DELETE FROM entry WHERE n > 200");
      assertThat(verify(ledger).findings()).isEmpty();
      statement.execute("COMMIT");
      // Still in the write-ahead log: the bridge has the file open.
      assertThat(found(ledger)).anyMatch(f -> f.startsWith("entries 201 to 299: missing"));
    }
  }

  @Test
  void readingLeavesTheFileAsItWas() throws Exception {
    LedgerFile ledger = ledger(300);
    byte[] before = Files.readAllBytes(ledger.file());
    verify(ledger);
    assertThat(Files.readAllBytes(ledger.file())).isEqualTo(before);
  }

  @Test
  void textThatIsNoUtf8ComesAsItsBytes() throws Exception {
    LedgerFile ledger = ledger(3);
    ledger.tamper("UPDATE trace SET station = CAST(x'61ff' AS TEXT) WHERE n = 0");
    assertThat(found(ledger))
        .containsExactly("trace 0: column station holds 2 bytes 61ff, entry 0 gives NULL");
  }

  @Test
  void aDamagedIndexIsFoundThoughEveryRowIsRight() throws Exception {
    LedgerFile ledger = ledger(60);
    // An index that was made over other rows hides entries from look-up by job.
    try (Connection db = ledger.connect();
        Statement statement = db.createStatement()) {
      statement.execute("DROP INDEX trace_job");
      statement.execute("CREATE INDEX trace_job ON trace (job) WHERE n < 30");
      statement.execute("PRAGMA writable_schema = ON");
      statement.execute(
          "UPDATE sqlite_schema SET sql = 'CREATE INDEX trace_job ON trace (job)'"
              + " WHERE name = 'trace_job'");
    }
    assertThat(found(ledger))
        .isNotEmpty()
        .allMatch(f -> f.matches("file: its structure is damaged: (row .*|wrong # of .*)"));
  }

  private static void refused(Path file, String message) {
    assertThatThrownBy(() -> RawReader.open(file))
        .isInstanceOf(IOException.class)
        .hasMessage(message);
  }
}
