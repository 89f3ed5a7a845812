package witnessmark.ledger.sqlite;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.verify.Report;
import witnessmark.ledger.verify.Verifier;

class OnlineCopyTest {
  private static final int SIZE = 65_800;

  @TempDir private Path directory;

  @Test
  void theWriterGoesOnInTheMidstOfACopyThatIsOfTheMomentItBegan() throws IOException {
    LedgerFiles files = LogOf.begun(directory.resolve("data"), SIZE);
    Path copy = directory.resolve("copy.db");
    List<Long> told = new ArrayList<>();
    try (SqliteLedger ledger = SqliteLedger.open(files);
        SqliteReading reading = SqliteReading.open(files)) {
      long entries =
          OnlineCopy.copy(
              files.database(),
              copy,
              percent -> {
                // Would a writer have to wait for the copy, this would wait for ever.
                LogOf.grow(ledger, SIZE + told.size(), SIZE + told.size() + 1);
                told.add(percent);
              });
      assertThat(entries).isEqualTo(SIZE);
      assertThat(told).hasSizeGreaterThan(1).isSorted().endsWith(100L);
      assertThat(reading.size()).isEqualTo(SIZE + told.size());
    }
    assertThat(directory.resolve("copy.db-wal")).doesNotExist();
    try (RawReader raw = RawReader.open(copy)) {
      Report report = Verifier.verify(raw, Files.readString(files.verifier()));
      assertThat(report.findings()).isEmpty();
      assertThat(report.size()).isEqualTo(SIZE);
    }
  }

  @Test
  void whatCannotBeWrittenIsSaid() {
    LedgerFiles files = LogOf.begun(directory.resolve("data"), 3);
    assertThatThrownBy(
            () -> OnlineCopy.copy(files.database(), directory.resolve("no/where.db"), p -> {}))
        .isInstanceOf(IOException.class)
        .hasMessage(
            directory.resolve("no/where.db")
                + " cannot be written: there is no directory "
                + directory.resolve("no")
                + ". Name a place that can be");
  }
}
