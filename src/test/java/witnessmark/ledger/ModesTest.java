package witnessmark.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What others may do with files that the program makes, when nothing else keeps them off. */
class ModesTest {
  @TempDir Path directory;

  private Path data() {
    return directory.resolve("data");
  }

  /** The program with umask 000. */
  private void run(String... arguments) throws IOException, InterruptedException {
    List<String> command = new ArrayList<>(List.of("sh", "-c", "umask 000; exec \"$0\" \"$@\""));
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-cp", System.getProperty("java.class.path"), "witnessmark.cli.Main"));
    command.addAll(List.of(arguments));
    Process process =
        new ProcessBuilder(command)
            .redirectErrorStream(true)
            .redirectOutput(directory.resolve("said").toFile())
            .start();
    assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
    assertThat(process.exitValue()).as(Files.readString(directory.resolve("said"))).isZero();
  }

  private static String mode(Path file) throws IOException {
    return PosixFilePermissions.toString(Files.getPosixFilePermissions(file));
  }

  @Test
  void nothingThatIsMadeCanBeWrittenByOthersWhateverTheUmask() throws Exception {
    run("ledger", "create", "--data", data().toString());
    Path proof = directory.resolve("entry.tlog-proof");
    run("ledger", "prove", "0", "--out", proof.toString(), "--data", data().toString());
    assertThat(mode(data())).isEqualTo("rwxr-x---");
    assertThat(mode(data().resolve("ledger.key"))).isEqualTo("rw-------");
    assertThat(mode(data().resolve("ledger.pub"))).isEqualTo("rw-r--r--");
    assertThat(mode(data().resolve("ledger.db"))).isEqualTo("rw-r-----");
    assertThat(mode(proof)).isEqualTo("rw-r--r--");
    try (Stream<Path> files = Files.list(data())) {
      for (Path file : files.toList()) {
        assertThat(mode(file)).as(file.toString()).matches("rw-[r-]--[r-]--");
      }
    }
    assertThat(new LedgerFiles(data()).exposed()).isEmpty();
  }

  @Test
  void aKeyThatOthersMayReadIsTold() throws IOException {
    LedgerFiles files = new LedgerFiles(data());
    NewLog.begin(files, file -> {});
    Path key = data().resolve("ledger.key");
    for (String open : List.of("rw-r-----", "rw----r--", "rw--w----")) {
      Files.setPosixFilePermissions(key, PosixFilePermissions.fromString(open));
      assertThat(files.exposed())
          .contains(
              "The log's key "
                  + key
                  + " is open to others ("
                  + open
                  + "): who reads it can sign another history. Run: chmod 600 "
                  + key);
    }
    Files.setPosixFilePermissions(key, PosixFilePermissions.fromString("r--------"));
    assertThat(files.exposed()).isEmpty();
  }

  @Test
  void aDirectoryThatOthersMayWriteToIsTold() throws IOException {
    LedgerFiles files = new LedgerFiles(data());
    NewLog.begin(files, file -> {});
    Files.setPosixFilePermissions(data(), PosixFilePermissions.fromString("rwxrwx---"));
    assertThat(files.exposed())
        .contains(data() + " may be written by others (rwxrwx---). Run: chmod go-w " + data());
  }

  @Test
  void aSecretIsForItsOwnerAndAtMostItsGroupToRead() throws IOException {
    Path secret = Files.writeString(directory.resolve("broker.pass"), "x");
    for (String kept : List.of("rw-------", "r--------", "rw-r-----")) {
      Files.setPosixFilePermissions(secret, PosixFilePermissions.fromString(kept));
      assertThat(Modes.open(secret)).as(kept).isEmpty();
    }
    Files.setPosixFilePermissions(secret, PosixFilePermissions.fromString("rw-rw-r--"));
    assertThat(Modes.open(secret))
        .contains(secret + " is open to others (rw-rw-r--). Run: chmod g-wx,o-rwx " + secret);
  }
}
