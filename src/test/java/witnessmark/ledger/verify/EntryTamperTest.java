package witnessmark.ledger.verify;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.sql.SQLException;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Rows of table {@code entry} changed behind the bridge's back, and what the verifier says. */
class EntryTamperTest extends LedgerTest {
  private static final int SIZE = 60;

  private LedgerFile ledger;

  @BeforeEach
  void write() throws SQLException {
    ledger = ledger(SIZE);
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 30, 58, 59})
  void changedBytesAreNamedOnce(int n) throws Exception {
    // Another digit in the time: still an entry, with the same trace row but for its time.
    ledger.tamper(
        "UPDATE entry SET bytes = CAST(replace(CAST(bytes AS TEXT), '03.311Z', '04.311Z') AS BLOB)"
            + " WHERE n = ?",
        n);
    assertThat(entryFindings()).containsExactly(notFrom(n));
    assertThat(found(ledger))
        .contains(
            "trace "
                + n
                + ": column at holds \"2026-11-25T10:02:03.311Z\", entry "
                + n
                + " gives \"2026-11-25T10:02:04.311Z\"")
        .anyMatch(f -> f.endsWith(": the entries named are not those that were signed"))
        .hasSize(3);
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 30, 58, 59})
  void aChangedLinkIsToldFromChangedBytes(int n) throws Exception {
    ledger.tamper("UPDATE entry SET link = randomblob(32) WHERE n = ?", n);
    assertThat(found(ledger))
        .containsExactly(
            "entry " + n + ": its link was changed; its bytes are as they were linked");
  }

  @Test
  void changedLinksAreToldFromChangedBytesWithoutACheckpointToo() throws Exception {
    ledger.tamper("UPDATE entry SET link = randomblob(32) WHERE n IN (20, 21, 40)");
    ledger.tamper("DELETE FROM checkpoint");
    String changed = ": its link was changed; its bytes are as they were linked";
    assertThat(entryFindings())
        .containsExactly("entry 20" + changed, "entry 21" + changed, "entry 40" + changed);
  }

  @Test
  void aLinkOfAnotherLengthIsFound() throws Exception {
    ledger.tamper("UPDATE entry SET link = link || x'00' WHERE n = 7");
    assertThat(found(ledger))
        .containsExactly("entry 7: its link was changed; its bytes are as they were linked");
  }

  @Test
  void bytesStoredAsTextAreFound() throws Exception {
    ledger.tamper("UPDATE entry SET bytes = CAST(bytes AS TEXT) WHERE n = 0");
    assertThat(found(ledger))
        .containsExactly(
            "entry 0: column bytes holds"
                + " \"{\"v\":1,\"kind\":\"log-opened\",\"at\":\"2026-11-25T10:02:03.311Z\",\"…\","
                + " expected a BLOB");
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 30, 58})
  void aRemovedRowIsNamed(int n) throws Exception {
    ledger.tamper("DELETE FROM entry WHERE n = ?", n);
    ledger.tamper("DELETE FROM trace WHERE n = ?", n);
    assertThat(entryFindings()).containsExactly("entry " + n + ": missing: the row was removed");
  }

  @Test
  void removedRowsInARowAreNamedTogether() throws Exception {
    ledger.tamper("DELETE FROM entry WHERE n BETWEEN 20 AND 29");
    assertThat(entryFindings()).containsExactly("entries 20 to 29: missing: the row was removed");
  }

  @Test
  void aRowRemovedUnderRenumberingIsNamedWhereItWas() throws Exception {
    ledger.tamper("DELETE FROM entry WHERE n = 30");
    shift("entry", 31, -1);
    assertThat(entryFindings())
        .containsExactly(
            notFrom(30),
            "entry 59: missing: the checkpoint signs 60 entries; the end of the log was cut off");
  }

  @Test
  void rowsCutOffTheEndAreNamed() throws Exception {
    ledger.tamper("DELETE FROM entry WHERE n >= 57");
    ledger.tamper("DELETE FROM trace WHERE n >= 57");
    assertThat(entryFindings())
        .containsExactly(
            "entries 57 to 59: missing: the checkpoint signs 60 entries; the end of the log was cut"
                + " off");
  }

  @Test
  void allRowsCutOffAreNamed() throws Exception {
    ledger.tamper("DELETE FROM entry");
    assertThat(entryFindings())
        .containsExactly(
            "entries 0 to 59: missing: the checkpoint signs 60 entries; the end of the log was cut"
                + " off");
  }

  @Test
  void bytesSwappedBetweenTwoRowsNameBoth() throws Exception {
    Object ten = bytes(10);
    Object forty = bytes(40);
    ledger.tamper("UPDATE entry SET bytes = ? WHERE n = 10", forty);
    ledger.tamper("UPDATE entry SET bytes = ? WHERE n = 40", ten);
    assertThat(entryFindings()).containsExactly(notFrom(10), notFrom(40));
  }

  @Test
  void wholeRowsSwappedAreTracedToWhereTheyWere() throws Exception {
    swap(10, 40);
    String why = " by the links; rows were swapped, reordered, inserted or renumbered";
    assertThat(entryFindings())
        .containsExactly(
            "entry 10: moved: made as entry 40" + why, "entry 40: moved: made as entry 10" + why);
  }

  @Test
  void neighboursSwappedAreTracedToWhereTheyWere() throws Exception {
    swap(10, 11);
    String why = " by the links; rows were swapped, reordered, inserted or renumbered";
    assertThat(entryFindings())
        .containsExactly(
            "entry 10: moved: made as entry 11" + why, "entry 11: moved: made as entry 10" + why);
  }

  @Test
  void theFirstAndTheLastSwappedAreTracedToWhereTheyWere() throws Exception {
    swap(0, 59);
    String why = " by the links; rows were swapped, reordered, inserted or renumbered";
    assertThat(entryFindings())
        .containsExactly(
            "entry 0: moved: made as entry 59" + why, "entry 59: moved: made as entry 0" + why);
  }

  @Test
  void anInsertedRowWithAFittingLinkIsNamed() throws Exception {
    byte[] forged = "{\"v\":1,\"kind\":\"forged\",\"at\":\"2026-11-25T10:00:00Z\"}".getBytes();
    byte[] link = LedgerFile.link((byte[]) ledger.read(link(29)), forged);
    shift("entry", 30, 1);
    ledger.tamper("INSERT INTO entry VALUES (30, ?, ?)", forged, link);
    assertThat(entryFindings())
        .containsExactly(
            "entry 30: inserted: entry 31 was made to follow entry 29", pushedBeyond("entry 60"));
  }

  @Test
  void anInsertedFirstRowIsNamed() throws Exception {
    byte[] forged = "{\"v\":1,\"kind\":\"forged\",\"at\":\"2026-11-25T10:00:00Z\"}".getBytes();
    shift("entry", 0, 1);
    ledger.tamper(
        "INSERT INTO entry VALUES (0, ?, ?)", forged, LedgerFile.link(new byte[32], forged));
    assertThat(entryFindings())
        .contains("entry 0: inserted: entry 1 was made as the first of the log");
  }

  @Test
  void anInsertedRowWithAnyLinkIsNamedAndSoAreTheRowsItShifted() throws Exception {
    shift("entry", 30, 1);
    ledger.tamper("INSERT INTO entry SELECT 30, bytes, randomblob(32) FROM entry WHERE n = 9");
    assertThat(entryFindings())
        .containsExactly(
            notFrom(30),
            "entries 31 to 60: moved: made as entries 30 to 59 by the links; rows were swapped,"
                + " reordered, inserted or renumbered",
            pushedBeyond("entry 60"));
  }

  @Test
  void aRowMovedBeyondTheEndIsFound() throws Exception {
    ledger.tamper("UPDATE entry SET n = 90 WHERE n = 5");
    assertThat(entryFindings())
        .containsExactly(
            "entry 5: missing: the row was removed",
            "entries 60 to 89: missing: the row was removed",
            "entry 90: moved: made as entry 5 by the links; rows were swapped, reordered, inserted"
                + " or renumbered",
            pushedBeyond("entries 60 to 90"));
  }

  @Test
  void aRowWithANumberBelowZeroIsFound() throws Exception {
    ledger.tamper("INSERT INTO entry SELECT -1, bytes, link FROM entry WHERE n = 3");
    assertThat(found(ledger))
        .containsExactly("row with n -1: expected a number from 0 up; the row was inserted");
  }

  @Test
  void rowsAppendedWithFittingLinksButNoKeyAreNamed() throws Exception {
    byte[] forged = "{\"v\":1,\"kind\":\"forged\",\"at\":\"2026-11-25T10:00:00Z\"}".getBytes();
    byte[] link = LedgerFile.link((byte[]) ledger.read(link(59)), forged);
    ledger.tamper("INSERT INTO entry VALUES (60, ?, ?)", forged, link);
    ledger.tamper(
        "INSERT INTO trace (n, kind, at, scope) VALUES (60, 'forged', '2026-11-25T10:00:00Z', 'none')");
    assertThat(found(ledger))
        .containsExactly(
            "entry 60: appended without the log's key: the checkpoint signs 60 entries");
  }

  @ParameterizedTest
  @ValueSource(strings = {"link", "zeroblob(32)", "(SELECT link FROM entry WHERE n = 58)"})
  void aRowAppendedWithAnyLinkBlamesNoneOfThoseThatWereSigned(String link) throws Exception {
    ledger.tamper("INSERT INTO entry SELECT 60, bytes, " + link + " FROM entry WHERE n = 59");
    assertThat(entryFindings())
        .containsExactly(
            "entry 60: appended without the log's key: the checkpoint signs 60 entries");
  }

  @Test
  void aRowAppendedAfterAGapIsNotTakenForOthersRemoved() throws Exception {
    ledger.tamper("INSERT INTO entry SELECT 63, bytes, link FROM entry WHERE n = 59");
    assertThat(entryFindings())
        .containsExactly(
            "entries 60 to 63: appended without the log's key: the checkpoint signs 60 entries");
  }

  @Test
  void aRowInsertedBeforeTheLastDoesNotMakeThatOneTheForgery() throws Exception {
    byte[] forged = "{\"v\":1,\"kind\":\"forged\",\"at\":\"2026-11-25T10:00:00Z\"}".getBytes();
    shift("entry", 59, 1);
    ledger.tamper(
        "INSERT INTO entry VALUES (59, ?, ?)",
        forged,
        LedgerFile.link((byte[]) ledger.read(link(58)), forged));
    assertThat(entryFindings())
        .containsExactly(
            "entry 59: inserted: entry 60 was made to follow entry 58", pushedBeyond("entry 60"));
  }

  @Test
  void aHistoryRewrittenWithItsLinksIsRefusedByTheSignedRoot() throws Exception {
    ledger.tamper(
        "UPDATE entry SET bytes = CAST(replace(CAST(bytes AS TEXT), '32.54', '33.54') AS BLOB)");
    byte[] link = new byte[32];
    for (int n = 0; n < SIZE; n++) {
      link = LedgerFile.link(link, (byte[]) bytes(n));
      ledger.tamper("UPDATE entry SET link = ? WHERE n = ?", link, n);
    }
    assertThat(found(ledger))
        .singleElement()
        .asString()
        .matches(
            "checkpoint: signs the root .{44} over 60 entries, these make .{44} though every link"
                + " agrees: the history was rewritten as a whole, links and all");
  }

  @Test
  void manyChangedRowsAreAllCounted() throws Exception {
    LedgerFile large = LedgerFile.write(directory.resolve("large.db"), Shop.of(900));
    large.tamper("UPDATE entry SET bytes = bytes || x'20' WHERE n % 2 = 1");
    Report report = verify(large);
    List<Finding> listed = report.findings();
    assertThat(listed).hasSize(Verifier.LISTED);
    assertThat(listed.get(0).place()).isEqualTo(Place.table("checkpoint"));
    assertThat(report.unlisted()).isGreaterThan(450);
  }

  private static String pushedBeyond(String entries) {
    return entries
        + ": beyond the 60 entries that the checkpoint signs: appended without the log's key, or"
        + " pushed here by a row inserted before";
  }

  private static String notFrom(int n) {
    return "entry "
        + n
        + (n == 0
            ? ": its link is not the one of a first entry"
            : ": its link does not follow from entry " + (n - 1))
        + " and its bytes: its bytes or link were changed, or an entry before it was removed";
  }

  private List<String> entryFindings() throws IOException {
    return verify(ledger).findings().stream()
        .filter(f -> f.place() instanceof Place.Entries)
        .map(Finding::toString)
        .toList();
  }

  private Object bytes(int n) throws SQLException {
    return ledger.read("SELECT bytes FROM entry WHERE n = " + n);
  }

  private static String link(int n) {
    return "SELECT link FROM entry WHERE n = " + n;
  }

  private void swap(int one, int other) throws SQLException {
    ledger.tamper("UPDATE entry SET n = -7 WHERE n = ?", one);
    ledger.tamper("UPDATE entry SET n = ? WHERE n = ?", one, other);
    ledger.tamper("UPDATE entry SET n = ? WHERE n = -7", other);
  }

  private void shift(String table, int from, int by) throws SQLException {
    ledger.tamper("UPDATE " + table + " SET n = -n - 1000 WHERE n >= ?", from);
    ledger.tamper("UPDATE " + table + " SET n = -n - 1000 + ? WHERE n < 0", by);
  }
}
