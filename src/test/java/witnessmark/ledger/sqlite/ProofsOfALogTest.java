package witnessmark.ledger.sqlite;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Random;
import java.util.TreeSet;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import witnessmark.ledger.Bundle;
import witnessmark.ledger.Growth;
import witnessmark.ledger.LedgerException;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.RewrittenException;
import witnessmark.ledger.TlogProof;
import witnessmark.ledger.verify.NaiveTree;
import witnessmark.ledger.verify.ProofCheck;
import witnessmark.ledger.verify.ProofResult;
import witnessmark.ledger.verify.VerifierKey;

class ProofsOfALogTest {
  @TempDir private Path directory;

  private static VerifierKey key(LedgerFiles files) throws IOException {
    return VerifierKey.parse(Files.readString(files.verifier()));
  }

  private static List<String> texts(JsonNode array) {
    List<String> texts = new ArrayList<>();
    array.forEach(element -> texts.add(element.textValue()));
    return texts;
  }

  private static List<String> base64(List<byte[]> hashes) {
    return hashes.stream().map(Base64.getEncoder()::encodeToString).toList();
  }

  /** 65 800: a tile of level 2, one of level 1 after it, and an open tail. */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 255, 256, 257, 600, 65_800})
  void aBundleHoldsThePathsOfTheDefinitionAndVerifies(int size) throws IOException {
    long seed = new Random().nextLong();
    Random random = new Random(seed);
    LedgerFiles files = LogOf.begun(directory, size);
    List<byte[]> entries = LogOf.entries(size);
    TreeSet<Long> some = new TreeSet<>(List.of(0L, size - 1L));
    random.longs(size > 1000 ? 3 : 200, 0, size).forEach(some::add);
    try (SqliteReading reading = SqliteReading.open(files)) {
      byte[] bundle = Bundle.of(reading, List.copyOf(some));
      JsonNode json = new ObjectMapper().readTree(bundle);
      assertThat(json.get("v").asInt()).isEqualTo(1);
      assertThat(json.get("checkpoint").textValue()).isEqualTo(reading.checkpoint().orElseThrow());
      List<Long> found = new ArrayList<>();
      for (JsonNode entry : json.get("entries")) {
        int n = entry.get("entry").intValue();
        found.add((long) n);
        assertThat(entry.get("leaf").binaryValue()).isEqualTo(entries.get(n));
        assertThat(texts(entry.get("path")))
            .as("seed %d, entry %d", seed, n)
            .isEqualTo(base64(NaiveTree.path(n, entries)));
      }
      assertThat(found).containsExactlyElementsOf(some);
      ProofResult.Included proved = (ProofResult.Included) ProofCheck.bundle(bundle, key(files));
      assertThat(proved.checkpoint().size()).isEqualTo(size);
      assertThat(proved.entries().stream().map(ProofResult.Entry::n))
          .containsExactlyElementsOf(some);
    }
  }

  @Test
  void everyEntryOfEverySizeIsProvedAndEverySizeGoesOn() throws IOException {
    LedgerFiles files = LogOf.begun(directory, 1);
    VerifierKey key = key(files);
    List<String> notes = new ArrayList<>();
    try (SqliteLedger ledger = SqliteLedger.open(files);
        SqliteReading reading = SqliteReading.open(files)) {
      for (int size = 1; size <= 600; size += size < 20 ? 1 : 29) {
        if (size > 1) {
          LogOf.grow(ledger, (int) reading.size(), size);
        }
        notes.add(reading.checkpoint().orElseThrow());
        List<Long> all = LongStream.range(0, size).boxed().toList();
        assertThat(ProofCheck.of(Bundle.of(reading, all), key))
            .isInstanceOf(ProofResult.Included.class);
        for (String note : notes) {
          byte[] growth = Growth.since(reading, note);
          long old = Long.parseLong(note.split("\n")[1]);
          assertThat(texts(new ObjectMapper().readTree(growth).get("path")))
              .isEqualTo(base64(NaiveTree.proof((int) old, LogOf.entries(size))));
          assertThat(ProofCheck.of(growth, key)).isInstanceOf(ProofResult.GoesOn.class);
        }
      }
    }
  }

  @Test
  void aTlogProofIsTheFileOfTheSpecificationWithTheEntryInItsExtraLine() throws IOException {
    LedgerFiles files = LogOf.begun(directory, 300);
    try (SqliteReading reading = SqliteReading.open(files)) {
      String text = TlogProof.of(reading, 299);
      Base64.Encoder base64 = Base64.getEncoder();
      StringBuilder expected = new StringBuilder("c2sp.org/tlog-proof@v1\nextra ");
      expected.append(base64.encodeToString(LogOf.entry(299))).append("\nindex 299\n");
      NaiveTree.path(299, LogOf.entries(300))
          .forEach(h -> expected.append(base64.encodeToString(h)).append('\n'));
      expected.append('\n').append(reading.checkpoint().orElseThrow());
      assertThat(text).isEqualTo(expected.toString());
      ProofResult.Included proved =
          (ProofResult.Included) ProofCheck.of(text.getBytes(StandardCharsets.UTF_8), key(files));
      assertThat(proved.entries().get(0).bytes()).isEqualTo(LogOf.entry(299));
    }
  }

  @Test
  void aBundleOfNothingOrOfWhatIsNotThereIsNotMade() {
    LedgerFiles files = LogOf.begun(directory, 3);
    try (SqliteReading reading = SqliteReading.open(files)) {
      assertThatThrownBy(() -> Bundle.of(reading, List.of()))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessage("No entry is named, so there is nothing to prove.");
      for (long n : new long[] {-1, 3, Long.MAX_VALUE}) {
        assertThatThrownBy(() -> Bundle.of(reading, List.of(1L, n)))
            .isInstanceOf(IllegalArgumentException.class)
            .hasMessage("There is no entry " + n + "; the log has the entries 0 to 2.");
      }
      // the transaction of a failed attempt is over
      assertThat(Bundle.of(reading, List.of(2L, 1L, 1L))).isNotEmpty();
    }
  }

  @Test
  void anEmptyLogHasNothingToProve() {
    LedgerFiles files = new LedgerFiles(directory.resolve("data"));
    SqliteLedger.create(files).close();
    try (SqliteReading reading = SqliteReading.open(files)) {
      assertThatThrownBy(() -> Bundle.of(reading, List.of(0L)))
          .isInstanceOf(LedgerException.class)
          .hasMessage("The log has no entry yet.");
    }
  }

  private void tamper(LedgerFiles files, String... statements) throws SQLException {
    try (Connection db = DriverManager.getConnection("jdbc:sqlite:" + files.database());
        Statement statement = db.createStatement()) {
      for (String sql : statements) {
        statement.execute(sql);
      }
    }
  }

  @Test
  void noProofIsMadeOfAChangedLog() throws SQLException {
    LedgerFiles files = LogOf.begun(directory, 600);
    tamper(files, "DROP TRIGGER entry_stays");
    for (String change :
        List.of(
            // below a tile, in the open tail, a tile, and a tile gone
            "UPDATE entry SET bytes = x'00' WHERE n = 7",
            "UPDATE entry SET bytes = x'00' WHERE n = 599",
            "UPDATE tile SET hash = zeroblob(32) WHERE idx = 1",
            "DELETE FROM tile WHERE idx = 1")) {
      tamper(files, "CREATE TABLE kept AS SELECT * FROM entry");
      tamper(files, "CREATE TABLE tiles AS SELECT * FROM tile", change);
      try (SqliteReading reading = SqliteReading.open(files)) {
        assertThatThrownBy(() -> Bundle.of(reading, List.of(3L, 7L)))
            .as(change)
            .isInstanceOf(LedgerException.class)
            .hasMessageEndingWith(" Run: witnessmark ledger verify");
      }
      tamper(files, "UPDATE entry SET bytes = (SELECT k.bytes FROM kept k WHERE k.n = entry.n)");
      tamper(files, "DELETE FROM tile", "INSERT INTO tile SELECT * FROM tiles");
      tamper(files, "DROP TABLE kept", "DROP TABLE tiles");
    }
    try (SqliteReading reading = SqliteReading.open(files)) {
      assertThat(Bundle.of(reading, List.of(3L, 7L))).isNotEmpty();
    }
  }

  @Test
  void aLogThatWasCutOffOrMadeAnewDoesNotGoOn() throws IOException {
    LedgerFiles files = LogOf.begun(directory, 300);
    String old;
    try (SqliteReading reading = SqliteReading.open(files)) {
      old = reading.checkpoint().orElseThrow();
      String[] lines = old.split("\n", 4);
      assertThatThrownBy(() -> Growth.since(reading, "other\n1\n" + lines[2] + "\n" + lines[3]))
          .isInstanceOf(RewrittenException.class)
          .hasMessage("The earlier checkpoint is of the log other, this log is " + lines[0] + ".");
      assertThatThrownBy(
              () -> Growth.since(reading, lines[0] + "\n301\n" + lines[2] + "\n" + lines[3]))
          .isInstanceOf(RewrittenException.class)
          .hasMessage(
              "History was rewritten: the earlier checkpoint signs 301 entries, the log has 300.");
      assertThatThrownBy(
              () -> Growth.since(reading, lines[0] + "\n299\n" + lines[2] + "\n" + lines[3]))
          .isInstanceOf(RewrittenException.class)
          .hasMessageStartingWith("History was rewritten: the earlier checkpoint signs the root ");
      assertThatThrownBy(
              () -> Growth.since(reading, lines[0] + "\n0\n" + lines[2] + "\n" + lines[3]))
          .isInstanceOf(RewrittenException.class)
          .hasMessageContaining("every log goes on from it");
      assertThatThrownBy(() -> Growth.since(reading, "nonsense"))
          .isInstanceOf(LedgerException.class);
    }
  }

  @Test
  void aProofCostsAFewReadsHoweverLongTheLog() {
    LedgerFiles files = LogOf.begun(directory, 65_800);
    try (SqliteReading reading = SqliteReading.open(files)) {
      Counting counting = new Counting(reading);
      Bundle.of(counting, List.of(40_000L));
      // the entry, its 256, the open tail, the tiles of levels 1 (two runs) and 2, and the look for
      // changes of the key, by index
      assertThat(counting.reads).isLessThanOrEqualTo(8);
      assertThat(counting.entries).isLessThanOrEqualTo(1 + 256 + 256);
    }
  }
}
