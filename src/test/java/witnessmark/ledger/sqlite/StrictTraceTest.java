package witnessmark.ledger.sqlite;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.verify.Finding;
import witnessmark.ledger.verify.Verifier;

/** The bridge's own trace table, whose types its declaration promises, behind the bridge's back. */
class StrictTraceTest {
  @TempDir private Path directory;

  private List<String> found(LedgerFiles files) throws Exception {
    try (RawReader raw = RawReader.open(files.database())) {
      return Verifier.verify(raw, Files.readString(files.verifier())).findings().stream()
          .map(Finding::toString)
          .toList();
    }
  }

  private static void tamper(LedgerFiles files, String... statements) throws Exception {
    try (Connection db = DriverManager.getConnection("jdbc:sqlite:" + files.database());
        Statement statement = db.createStatement()) {
      for (String sql : statements) {
        statement.execute(sql);
      }
    }
  }

  @Test
  void aValueOfAnotherTypeThatLooksTheSameAsTextIsFound() throws Exception {
    LedgerFiles files = LogOf.begun(directory, 300);
    String strict =
        "UPDATE sqlite_schema SET sql = replace(sql, ') STRICT', ')') WHERE name = 'trace'";
    String back = "UPDATE sqlite_schema SET sql = sql || ' STRICT' WHERE name = 'trace'";
    tamper(files, "PRAGMA writable_schema = ON", strict);
    tamper(files, "UPDATE trace SET kind = CAST(kind AS BLOB) WHERE n = 7");
    assertThat(found(files))
        .hasSize(2)
        .anyMatch(f -> f.startsWith("schema: table trace is not made as the format says"))
        .last()
        .asString()
        .startsWith("trace 7: column kind holds ");
    tamper(files, "PRAGMA writable_schema = ON", back);
    assertThat(found(files))
        .contains("file: its structure is damaged: non-TEXT value in trace.kind");
  }

  @Test
  void bytesThatAreTextUnderAnotherDeclarationAreFound() throws Exception {
    LedgerFiles files = LogOf.begun(directory, 300);
    String loose =
        "UPDATE sqlite_schema SET sql = replace(sql, ') STRICT', ')') WHERE name = 'entry'";
    String back = "UPDATE sqlite_schema SET sql = sql || ' STRICT' WHERE name = 'entry'";
    tamper(files, "PRAGMA writable_schema = ON", loose);
    tamper(
        files,
        "DROP TRIGGER entry_stays",
        "UPDATE entry SET bytes = CAST(bytes AS TEXT) WHERE n = 7");
    assertThat(found(files))
        .hasSize(3)
        .anyMatch(f -> f.startsWith("schema: table entry is not made as the format says"))
        .contains("schema: trigger entry_stays is missing")
        .last()
        .asString()
        .startsWith("entry 7: column bytes holds ");
    tamper(files, "PRAGMA writable_schema = ON", back);
    assertThat(found(files))
        .contains("file: its structure is damaged: non-BLOB value in entry.bytes");
  }

  @Test
  void aTextThatLooksLikeNothingAtAllIsNotNothing() throws Exception {
    LedgerFiles files = LogOf.begun(directory, 20);
    for (String odd : List.of("''", "char(30)", "char(31)", "char(31, 30)", "char(30, 31)")) {
      tamper(files, "UPDATE trace SET station = " + odd + " WHERE n = 7");
      assertThat(found(files))
          .as(odd)
          .hasSize(1)
          .first()
          .asString()
          .startsWith("trace 7: column station holds \"")
          .endsWith("\", entry 7 gives NULL");
    }
    tamper(files, "UPDATE trace SET station = NULL WHERE n = 7");
    assertThat(found(files)).isEmpty();
    // two columns whose texts run into each other
    tamper(files, "UPDATE trace SET kind = kind || char(31, 30, 31) || at, at = '' WHERE n = 7");
    assertThat(found(files)).hasSize(2);
  }
}
