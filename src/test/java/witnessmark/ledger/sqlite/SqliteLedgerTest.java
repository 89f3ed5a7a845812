package witnessmark.ledger.sqlite;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.ledger.Draft;
import witnessmark.ledger.Ledger;
import witnessmark.ledger.LedgerException;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.TraceRow;
import witnessmark.ledger.verify.Report;
import witnessmark.ledger.verify.Verifier;

class SqliteLedgerTest {
  @TempDir private Path directory;

  private static Draft draft(String text) {
    String at = "2026-11-25T10:00:00.000Z";
    String json =
        "{\"kind\":\"refused\",\"v\":1,\"at\":\"" + at + "\",\"reason\":\"" + text + "\"}";
    TraceRow row =
        new TraceRow("refused", at, "none", null, null, null, null, null, null, null, null, null);
    return new Draft(json.getBytes(StandardCharsets.UTF_8), row, Optional.empty());
  }

  private LedgerFiles files() {
    return new LedgerFiles(directory.resolve("data"));
  }

  private static void append(Ledger ledger, String... texts) {
    try (Ledger.Appending txn = ledger.begin()) {
      for (String text : texts) {
        txn.append(draft(text));
      }
      txn.commit();
    }
  }

  private Report verified() throws Exception {
    try (RawReader raw = RawReader.open(files().database())) {
      return Verifier.verify(raw, Files.readString(files().verifier()).strip());
    }
  }

  @Test
  void whatIsAppendedInGroupsOfAnySizeVerifiesByTheIndependentReader() throws Exception {
    Random random = new Random(7);
    int size = 0;
    try (SqliteLedger ledger = SqliteLedger.create(files())) {
      while (size < 1500) { // past five tiles
        String[] group = new String[1 + random.nextInt(100)];
        java.util.Arrays.setAll(group, i -> "entry");
        append(ledger, group);
        size += group.length;
      }
    }
    Report report = verified();
    assertThat(report.findings()).isEmpty();
    assertThat(report.size()).isEqualTo(size);
  }

  @Test
  void theTreesEdgeIsRebuiltFromTilesAtEverySize() throws Exception {
    SqliteLedger.create(files()).close();
    for (int size = 0; size < 600; size += 37) {
      try (SqliteLedger ledger = SqliteLedger.open(files())) {
        ledger.live(); // throws unless the rebuilt root is the signed one
        String[] group = new String[37];
        java.util.Arrays.setAll(group, i -> "entry");
        append(ledger, group);
      }
    }
    assertThat(verified().findings()).isEmpty();
  }

  @Test
  void twoLedgersOnOneFileTakeInWhatTheOtherAppended() throws Exception {
    try (SqliteLedger one = SqliteLedger.create(files());
        SqliteLedger two = SqliteLedger.open(files())) {
      append(one, "a", "b");
      try (Ledger.Appending txn = two.begin()) {
        assertThat(txn.news()).extracting(s -> s.n()).containsExactly(0L, 1L);
        assertThat(txn.append(draft("c"))).isEqualTo(2);
        txn.commit();
      }
      append(one, "d");
    }
    assertThat(verified().size()).isEqualTo(4);
    assertThat(verified().findings()).isEmpty();
  }

  @Test
  void aTransactionClosedWithoutCommitLeavesNothing() throws Exception {
    try (SqliteLedger ledger = SqliteLedger.create(files())) {
      append(ledger, "a");
      try (Ledger.Appending txn = ledger.begin()) {
        txn.append(draft("b"));
      }
      append(ledger, "c");
    }
    assertThat(verified().size()).isEqualTo(2);
    assertThat(verified().findings()).isEmpty();
  }

  @Test
  void theTableRefusesUpdateDeleteReplaceAndGaps() throws Exception {
    try (SqliteLedger ledger = SqliteLedger.create(files())) {
      append(ledger, "a", "b");
    }
    assertRefused("UPDATE entry SET bytes = x'00' WHERE n = 0", "the log never changes");
    assertRefused("DELETE FROM entry WHERE n = 1", "the log never forgets");
    assertRefused("INSERT INTO entry VALUES (5, x'00', x'00')", "the log only goes on at its end");
    assertRefused(
        "INSERT OR REPLACE INTO entry VALUES (1, x'00', x'00')", "the log only goes on at its end");
  }

  private void assertRefused(String sql, String why) throws SQLException {
    try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + files().database())) {
      assertThatThrownBy(() -> c.createStatement().execute(sql)).hasMessageContaining(why);
    }
  }

  @Test
  void nothingIsAppendedToAnEndThatIsNotAsItWasSigned() throws Exception {
    try (SqliteLedger ledger = SqliteLedger.create(files())) {
      append(ledger, "a", "b");
      behindItsBack(
          "DROP TRIGGER entry_goes_on", "INSERT INTO entry VALUES (2, x'7b7d', zeroblob(32))");
      assertThatThrownBy(() -> append(ledger, "c"))
          .isInstanceOf(LedgerException.class)
          .hasMessage(tampered());
    }
    assertThatThrownBy(() -> SqliteLedger.open(files()).live()).hasMessage(tampered());
  }

  @Test
  void nothingIsAppendedWhenTheEndWasCutOff() throws Exception {
    try (SqliteLedger ledger = SqliteLedger.create(files())) {
      append(ledger, "a", "b");
      behindItsBack("DROP TRIGGER entry_remains", "DELETE FROM entry WHERE n = 1");
      assertThatThrownBy(() -> append(ledger, "c")).hasMessage(tampered());
    }
    assertThatThrownBy(() -> SqliteLedger.open(files()).live()).hasMessage(tampered());
  }

  private String tampered() {
    return "The end of the log "
        + files().database()
        + " is not as it was signed, so nothing may be"
        + " added to it. Run: witnessmark ledger verify --data "
        + files().directory();
  }

  private void behindItsBack(String... statements) throws SQLException {
    try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + files().database())) {
      for (String sql : statements) {
        c.createStatement().execute(sql);
      }
    }
  }

  @Test
  void aMistypedDirectoryBeginsNoSecondHistory() {
    assertThatThrownBy(() -> SqliteLedger.open(files()))
        .hasMessage(
            "No log in "
                + files().directory()
                + ". Is it the right directory (--data, WITNESSMARK_DATA)? To begin one: witnessmark"
                + " ledger create --data "
                + files().directory());
    assertThat(directory).isEmptyDirectory();
  }

  @Test
  void aSecondCreateIsRefused() {
    SqliteLedger.create(files()).close();
    assertThatThrownBy(() -> SqliteLedger.create(files()))
        .hasMessage("A log exists already in " + files().directory() + "; it goes on as it is.");
  }

  @Test
  void aNewerFormatIsRefusedByName() throws Exception {
    SqliteLedger.create(files()).close();
    behindItsBack("PRAGMA user_version=9");
    assertThatThrownBy(() -> SqliteLedger.open(files()))
        .hasMessage(
            files().database()
                + " has format version 9; this program knows up to 1."
                + " Use the newer program that wrote it.");
  }

  @Test
  void thePrivateKeyIsReadableByItsOwnerOnly() throws Exception {
    SqliteLedger.create(files()).close();
    assertThat(Files.getPosixFilePermissions(files().directory().resolve("ledger.key")))
        .isEqualTo(PosixFilePermissions.fromString("rw-------"));
  }

  @Test
  void everyCommitIsSynced() throws Exception {
    SqliteLedger.create(files()).close();
    try (Connection c = Database.open(files().database())) {
      assertThat(Database.number(c, "PRAGMA synchronous")).as("2 is FULL").isEqualTo(2);
    }
  }
}
