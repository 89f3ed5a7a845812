package witnessmark.ledger.verify;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.SQLException;
import java.util.HexFormat;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Tables that follow from the entries, the checkpoint and the file's own words, tampered with. */
class DerivedTamperTest extends LedgerTest {
  private static final int SIZE = 520;

  private LedgerFile ledger;

  @BeforeEach
  void write() throws SQLException {
    ledger = ledger(SIZE);
  }

  @Test
  void aChangedTileIsNamed() throws Exception {
    String right = HexFormat.of().formatHex((byte[]) ledger.read("SELECT hash FROM tile"));
    ledger.tamper("UPDATE tile SET hash = zeroblob(32) WHERE idx = 0");
    assertThat(found(ledger))
        .containsExactly(
            "tile level 1 idx 0: holds 32 bytes "
                + "0".repeat(64)
                + ", entries 0 to 255 give 32 bytes "
                + right);
  }

  @Test
  void missingTilesAreNamed() throws Exception {
    ledger.tamper("DELETE FROM tile");
    assertThat(found(ledger))
        .containsExactly(
            "tile level 1 idx 0: the row is missing; entries 0 to 255 fill it",
            "tile level 1 idx 1: the row is missing; entries 256 to 511 fill it");
  }

  @Test
  void extraTilesAreNamed() throws Exception {
    ledger.tamper(
        "INSERT INTO tile VALUES (1, -1, x'00'), (1, 2, x'00'), (1, 'x', x'00'), (2, 0, x'00'),"
            + " (0, 0, x'00'), ('one', 0, x'00'), (NULL, NULL, NULL)");
    assertThat(found(ledger))
        .containsExactlyInAnyOrder(
            "tile level 1 idx -1: the row is extra; the entries fill no such subtree",
            "tile level 1 idx 2: the row is extra; the entries fill no such subtree",
            "tile level 1 idx \"x\": column idx holds no integer",
            "tile level 2 idx 0: the row is extra; the entries fill no such subtree",
            "tile level 0 idx 0: the row is extra; the entries fill no such subtree",
            "tile level \"one\" idx 0: the row is extra; the entries fill no such subtree",
            "tile level NULL idx NULL: the row is extra; the entries fill no such subtree");
  }

  @Test
  void aChangedTraceColumnIsNamedWithItsEntry() throws Exception {
    ledger.tamper("UPDATE trace SET fastener = 'carrier-left/4', number = NULL WHERE n = 8");
    ledger.tamper("UPDATE trace SET job = 'J-1' WHERE n = 0");
    assertThat(found(ledger))
        .containsExactly(
            "trace 0: column job holds \"J-1\", entry 0 gives NULL",
            "trace 8: column fastener holds \"carrier-left/4\", entry 8 gives \"carrier-left/3\"",
            "trace 8: column number holds NULL, entry 8 gives 61");
  }

  @Test
  void theSameValueInAnotherTypeIsFound() throws Exception {
    ledger.tamper("UPDATE trace SET station = CAST(station AS BLOB) WHERE n = 8");
    ledger.tamper("UPDATE job SET status = CAST(status AS BLOB) WHERE job = 'J-2'");
    assertThat(found(ledger))
        .containsExactly(
            "job J-2: column status holds 6 bytes 636c6f736564, the entries give \"closed\"",
            "trace 8: column station holds 7 bytes 62656e63682d31, entry 8 gives \"bench-1\"");
  }

  @Test
  void textsThatLookTheSameButAreNotAreFound() throws Exception {
    ledger.tamper("UPDATE trace SET fingerprint = fingerprint || char(0) || 'x' WHERE n = 8");
    ledger.tamper("UPDATE trace SET fingerprint = '' WHERE n = 2");
    ledger.tamper("UPDATE trace SET fingerprint = char(30) WHERE n = 3");
    ledger.tamper("UPDATE trace SET effect = x'' WHERE n = 4");
    ledger.tamper("UPDATE trace SET number = number + 0.5 WHERE n = 9");
    assertThat(found(ledger))
        .containsExactly(
            "trace 2: column fingerprint holds \"\", entry 2 gives NULL",
            "trace 3: column fingerprint holds \"\\u001e\", entry 3 gives NULL",
            "trace 4: column effect holds 0 bytes , entry 4 gives NULL",
            "trace 8: column fingerprint holds \"f61\\u0000x\", entry 8 gives \"f61\"",
            "trace 9: column number holds 62.5, entry 9 gives 62");
  }

  @Test
  void halfAPairIsNotTakenForTheQuestionMarkThatStandsInItsRow() throws Exception {
    ledger.tamper(
        "UPDATE entry SET bytes = CAST(replace(CAST(bytes AS TEXT), 'bench-1', 'b\\ud800') AS BLOB)"
            + " WHERE n = 8");
    ledger.tamper("UPDATE trace SET station = 'b?' WHERE n = 8");
    assertThat(found(ledger))
        .anyMatch(f -> f.startsWith("trace 8: column station holds \"b?\", entry 8 gives "));
  }

  @Test
  void textsBeyondAsciiAreComparedToo() throws Exception {
    ledger.tamper(
        "UPDATE entry SET bytes = CAST(replace(CAST(bytes AS TEXT), 'bench-1', 'prüf-1') AS BLOB)"
            + " WHERE n = 8");
    ledger.tamper("UPDATE trace SET station = 'prüf-1' WHERE n = 8");
    assertThat(found(ledger)).noneMatch(f -> f.startsWith("trace"));
    ledger.tamper("UPDATE trace SET station = 'prUf-1' WHERE n = 8");
    assertThat(found(ledger))
        .contains("trace 8: column station holds \"prUf-1\", entry 8 gives \"prüf-1\"");
  }

  @Test
  void missingAndExtraTraceRowsAreNamed() throws Exception {
    ledger.tamper("DELETE FROM trace WHERE n IN (0, 8, 519)");
    ledger.tamper("INSERT INTO trace (n) VALUES (-5), (520)");
    assertThat(found(ledger))
        .containsExactly(
            "trace -5: the row is extra; there is no entry -5",
            "trace 0: the row is missing; entry 0 has none",
            "trace 8: the row is missing; entry 8 has none",
            "trace 519: the row is missing; entry 519 has none",
            "trace 520: the row is extra; there is no entry 520");
  }

  @Test
  void wrongMissingAndExtraJobRowsAreNamed() throws Exception {
    ledger.tamper("UPDATE job SET status = 'open', ended = NULL WHERE job = 'J-1'");
    ledger.tamper("DELETE FROM job WHERE job = 'J-2'");
    ledger.tamper("INSERT INTO job (job, status) VALUES ('J-999', 'closed'), (NULL, NULL)");
    assertThat(found(ledger))
        .containsExactlyInAnyOrder(
            "job J-1: column status holds \"open\", the entries give \"abandoned\"",
            "job J-1: column ended holds NULL, the entries give 17",
            "job J-999: the row is extra; no entry opened such a job, or it stands here twice",
            "job NULL: the row is extra; no entry opened such a job, or it stands here twice",
            "job J-2: the row is missing; entry 18 opened the job");
  }

  @Test
  void aFindingCarriesNoControlCharacters() throws Exception {
    ledger.tamper("INSERT INTO job (job) VALUES ('J' || char(27) || '[2J')");
    assertThat(found(ledger))
        .containsExactly(
            "job J?[2J: the row is extra; no entry opened such a job, or it stands here twice");
  }

  @Test
  void aMissingCheckpointIsFound() throws Exception {
    ledger.tamper("DELETE FROM checkpoint");
    assertThat(found(ledger))
        .containsExactly(
            "checkpoint: there is no row; nothing says how many entries there were, nor which");
  }

  @Test
  void aCheckpointOfAnotherKeyIsFoundAndNothingElseIsSaid() throws Exception {
    TestKey other = TestKey.second(TestKey.ORIGIN);
    String note = other.checkpoint(9, new byte[32]);
    ledger.tamper("UPDATE checkpoint SET note = ?", note);
    assertThat(found(ledger))
        .containsExactly(
            "checkpoint: is signed by the key with id "
                + HexFormat.of().formatHex(other.id())
                + ", expected the key with id "
                + HexFormat.of().formatHex(ledger.key().id()));
  }

  @Test
  void aCheckpointSignatureWithOneByteMoreIsFound() throws Exception {
    String note = (String) ledger.read("SELECT note FROM checkpoint");
    String text = note.substring(0, note.indexOf("\n\n") + 1);
    ledger.tamper("UPDATE checkpoint SET note = ?", ledger.key().note(text, (byte) 0));
    assertThat(found(ledger))
        .containsExactly("checkpoint: its signature has 65 bytes, expected exactly 64");
  }

  @Test
  void anOlderCheckpointShowsTheEntriesAfterIt() throws Exception {
    byte[] root = ExportRoot.mth(Shop.of(500).entries.stream().map(Made::bytes).toList());
    ledger.tamper("UPDATE checkpoint SET note = ?", ledger.key().checkpoint(500, root));
    assertThat(found(ledger))
        .containsExactly(
            "entries 500 to 519: appended without the log's key: the checkpoint signs 500 entries");
  }

  @Test
  void aCheckpointInAnotherTypeOrRowIsFound() throws Exception {
    ledger.tamper("UPDATE checkpoint SET note = CAST('note' AS BLOB)");
    assertThat(found(ledger))
        .containsExactly("checkpoint: column note holds 4 bytes 6e6f7465, expected text in UTF-8");
  }

  @Test
  void aTableThatIsGoneIsOneFindingEach() throws Exception {
    for (String table : new String[] {"tile", "trace", "job", "checkpoint"}) {
      ledger.tamper("DROP TABLE " + table);
    }
    assertThat(found(ledger))
        .hasSize(4)
        .allMatch(
            f -> f.matches("(checkpoint|tile|job|trace): cannot be read: table .*no such table.*"));
  }

  @Test
  void withoutTheEntryTableNothingElseIsJudged() throws Exception {
    ledger.tamper("DROP TABLE entry");
    assertThat(found(ledger))
        .singleElement()
        .asString()
        .startsWith(
            "table entry: no entry could be read, so nothing that needs it was checked: table entry"
                + " of "
                + ledger.file()
                + ": ")
        .endsWith("; put a backup in its place with witnessmark ledger restore");
  }

  @Test
  void theFilesOwnWordsAreChecked() throws Exception {
    ledger.tamper("PRAGMA application_id = 5");
    ledger.tamper("PRAGMA user_version = 0");
    assertThat(found(ledger))
        .containsExactly(
            "file: its application_id is 5, expected 1465142593",
            "file: its user_version is 0, expected 1");
  }
}
