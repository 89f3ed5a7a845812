package witnessmark.ledger.sqlite;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import witnessmark.ledger.LedgerException;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.verify.Verifier;

/** What the file is made of: views, triggers, tables and indexes that no log has. */
class SchemaTest {
  @TempDir Path directory;
  private LedgerFiles files;

  @BeforeEach
  void aLog() {
    files = LogOf.begun(directory, 3);
  }

  private void sql(String... statements) throws Exception {
    try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + files.database());
        Statement s = c.createStatement()) {
      for (String sql : statements) {
        s.executeUpdate(sql);
      }
    }
  }

  private List<String> found() throws Exception {
    try (RawReader raw = RawReader.open(files.database())) {
      return Verifier.verify(raw, Files.readString(files.verifier())).findings().stream()
          .map(Object::toString)
          .toList();
    }
  }

  @Test
  void whatTheProgramMakesIsWhatTheFormatPublishes() throws Exception {
    assertThat(found()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"trace", "entry", "job", "checkpoint", "tile"})
  void aViewInATablesPlaceIsNamedAndNeitherReadNorWritten(String table) throws Exception {
    sql("ALTER TABLE " + table + " RENAME TO t2");
    sql("CREATE VIEW " + table + " AS SELECT * FROM t2 WHERE strftime('%S', 'now') >= '30' OR 1");
    assertThat(found())
        .contains(
            "schema: view "
                + table
                + " is extra: no log has it, and it may change what is shown or appended")
        .contains("schema: table " + table + " is missing");
    assertThatThrownBy(() -> SqliteReading.open(files))
        .isInstanceOf(LedgerException.class)
        .hasMessageStartingWith("The log " + files.database() + " holds the view " + table)
        .hasMessageContaining("witnessmark ledger verify");
    assertThatThrownBy(() -> SqliteLedger.open(files))
        .isInstanceOf(LedgerException.class)
        .hasMessageStartingWith("The log " + files.database() + " holds the view " + table);
  }

  @Test
  void aTriggerThatNoLogHasIsNamedAndKeepsTheLogShut() throws Exception {
    sql(
        "CREATE TRIGGER quiet AFTER INSERT ON trace BEGIN UPDATE trace SET verdict = 'accepted'"
            + " WHERE n = NEW.n; END");
    assertThat(found())
        .containsExactly(
            "schema: trigger quiet is extra: no log has it, and it may change what is shown or"
                + " appended");
    assertThatThrownBy(() -> SqliteLedger.open(files))
        .hasMessageStartingWith("The log " + files.database() + " holds the trigger quiet");
  }

  @Test
  void anotherTriggerUnderAKnownNameIsNamed() throws Exception {
    sql(
        "DROP TRIGGER entry_stays",
        "CREATE TRIGGER entry_stays BEFORE UPDATE ON entry WHEN 0"
            + " BEGIN SELECT RAISE(ABORT, 'the log never changes'); END");
    assertThat(found())
        .singleElement()
        .asString()
        .startsWith(
            "schema: trigger entry_stays is not made as the format says: from character 50 on"
                + " expected \"BEGIN SELECT");
    assertThatThrownBy(() -> SqliteReading.open(files)).hasMessageContaining("entry_stays");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "CREATE TABLE note (a)|table note is extra",
        "CREATE INDEX trace_more ON trace (effect)|index trace_more is extra",
        "ANALYZE|table sqlite_stat1 is extra",
        "DROP INDEX trace_shop|index trace_shop is missing",
        "DROP TRIGGER entry_remains|trigger entry_remains is missing",
        "DROP TABLE cursor|table cursor is missing",
        "ALTER TABLE trace ADD COLUMN more TEXT|table trace is not made as the format says",
        "ALTER TABLE job ADD COLUMN more TEXT AS (unit)|table job is not made as the format says",
      })
  void everyObjectThatIsMissingExtraOrDifferentIsNamed(String change, String name)
      throws Exception {
    sql(change);
    assertThat(found()).anyMatch(f -> f.startsWith("schema: " + name));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "trace_at|trace (n, at)",
        "trace_seen|trace (wrench, number, fingerprint) WHERE fingerprint IS NULL",
        "trace_seen|trace (wrench, fingerprint) WHERE fingerprint > ''",
        "job_unit|job (unit, opened) WHERE unit <> 'ATR-26-0147'",
        "trace_shop|trace (n) WHERE scope = 'none'",
      })
  void anIndexOverOtherRowsOrColumnsIsNamedAndRenewedByTheNextWriter(String index, String on)
      throws Exception {
    sql("DROP INDEX " + index, "CREATE INDEX " + index + " ON " + on);
    assertThat(found()).singleElement().asString().startsWith("schema: index " + index + " is not");
    SqliteLedger.open(files).close();
    assertThat(found()).isEmpty();
  }

  @Test
  void anIndexAsAnEarlierVersionMadeItIsAllowed() throws Exception {
    sql(
        "DROP INDEX trace_seen",
        "CREATE INDEX trace_seen ON trace (wrench, fingerprint) WHERE fingerprint IS NOT NULL");
    assertThat(found()).isEmpty();
  }

  @Test
  void spacesAreNoDifference() throws Exception {
    sql("DROP INDEX trace_at", "CREATE INDEX trace_at\n  ON trace (at, n)");
    assertThat(found()).isEmpty();
  }
}
