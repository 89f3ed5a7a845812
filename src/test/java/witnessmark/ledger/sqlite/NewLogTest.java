package witnessmark.ledger.sqlite;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import witnessmark.ledger.LedgerException;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.NewLog;

class NewLogTest {
  @TempDir private Path directory;

  private Map<String, String> held(LedgerFiles files) throws IOException {
    Map<String, String> held = new TreeMap<>();
    try (Stream<Path> all = Files.list(files.directory())) {
      for (Path file : all.toList()) {
        held.put(
            file.getFileName().toString(),
            Files.readString(file, java.nio.charset.StandardCharsets.ISO_8859_1));
      }
    }
    return held;
  }

  @Test
  void whereALogLostItsFileNoOtherIsBegunOverItsKeys() throws IOException {
    LedgerFiles files = LogOf.begun(directory, 3);
    Files.delete(files.database());
    Files.writeString(files.wal(), "what was recorded last");
    Map<String, String> before = held(files);
    assertThatThrownBy(() -> SqliteLedger.create(files))
        .isInstanceOf(LedgerException.class)
        .hasMessage(
            "No log is begun in "
                + files.directory()
                + ": its ledger.db is gone, but ledger.db-wal, ledger.key and ledger.pub are there,"
                + " and would be lost. Put ledger.db back, or a backup in its place: witnessmark"
                + " ledger restore BACKUP --data "
                + files.directory()
                + ". For another log, move the whole directory aside first, and keep it. If no log"
                + " was ever here, remove them, and begin anew.");
    assertThat(held(files)).isEqualTo(before);
    assertThatThrownBy(() -> SqliteReading.open(files))
        .hasMessage(
            "No log in "
                + files.directory()
                + ": its ledger.db is gone, but ledger.db-wal, ledger.key and ledger.pub are there."
                + " Put ledger.db back, or a backup in its place: witnessmark ledger restore BACKUP"
                + " --data "
                + files.directory()
                + ".");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "ledger.key",
        "ledger.pub",
        "ledger.key.next",
        "ledger.pub.next",
        "ledger.db-wal",
        "ledger.db-journal",
        "ledger.db.unfinished",
        "ledger.db.old"
      })
  void anythingThatIsLeftOfALogIsEnough(String name) throws IOException {
    LedgerFiles files = new LedgerFiles(directory);
    Files.writeString(directory.resolve(name), "left");
    assertThatThrownBy(() -> SqliteLedger.create(files))
        .hasMessageContaining(
            "its ledger.db is gone, but " + name + " is there, and would be lost");
    assertThat(held(files)).isEqualTo(Map.of(name, "left"));
  }

  @Test
  void aBeginningThatWasCutShortDoesNotStandInTheWayOfTheNext() throws IOException {
    LedgerFiles files = new LedgerFiles(directory);
    Files.writeString(directory.resolve("ledger.db.new"), "half");
    Files.writeString(directory.resolve("ledger.db.new-wal"), "half");
    SqliteLedger.create(files).close();
    assertThat(held(files)).containsOnlyKeys("ledger.db", "ledger.key", "ledger.pub");
  }

  @Test
  void keysOfABeginningThatWasCutShortAreToldFromThoseOfALostLog() throws IOException {
    LedgerFiles files = new LedgerFiles(directory);
    Files.writeString(directory.resolve("ledger.db.new"), "whole");
    Files.writeString(files.verifier(), "a key");
    assertThatThrownBy(() -> SqliteLedger.create(files))
        .hasMessageEndingWith(
            " Or, as ledger.db.new shows that a log was only about to be begun here, remove them,"
                + " and begin anew.");
    assertThat(held(files)).containsOnlyKeys("ledger.db.new", "ledger.pub");
  }

  @Test
  void whatCannotBeBegunLeavesNothingBehind() throws IOException {
    LedgerFiles files = new LedgerFiles(directory.resolve("data"));
    assertThatThrownBy(
            () ->
                NewLog.begin(
                    files,
                    file -> {
                      throw new LedgerException("no room");
                    }))
        .hasMessage("no room");
    assertThat(files.directory()).doesNotExist();
    // Later: the keys are about to be made.
    Files.createDirectory(files.directory());
    assertThatThrownBy(
            () ->
                NewLog.begin(
                    files,
                    file -> {
                      try {
                        Files.createDirectory(files.secret());
                      } catch (IOException e) {
                        throw new IllegalStateException(e);
                      }
                    }))
        .hasMessage(
            "No log can be begun in "
                + files.directory()
                + ": "
                + files.secret()
                + ": a file of that name is in the way. Name a new or empty directory that you may"
                + " write to with --data.");
    assertThat(files.directory()).isDirectoryContaining(files.secret()::equals);
    try (Stream<Path> all = Files.list(files.directory())) {
      assertThat(all).hasSize(1);
    }
  }
}
