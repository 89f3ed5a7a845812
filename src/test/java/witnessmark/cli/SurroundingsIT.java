package witnessmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.bench.Program;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.sqlite.SqliteLedger;

/** Real disks that are full or read-only, and a user who may only read. */
class SurroundingsIT {
  @TempDir private Path directory;
  private Program program;

  @BeforeEach
  void begin() {
    program = new Program(directory);
    program.run("ledger", "create").orThrow();
    program.run("operator", "enrol", "badge-07").orThrow();
  }

  @AfterEach
  void writable() throws IOException {
    mode("rwxr-x---");
  }

  private void mode(String mode) throws IOException {
    Files.setPosixFilePermissions(
        directory.resolve("witnessmark-data"), PosixFilePermissions.fromString(mode));
  }

  /** With a memory disk at {@code disk}, in a namespace that goes with the command. */
  private Program onDisk(String options, String prepare) throws IOException {
    Files.createDirectories(directory.resolve("disk"));
    String script =
        "mount -t tmpfs -o "
            + options
            + " none disk && "
            + prepare
            + " && \"$@\"; status=$?;"
            + " ls -A disk > left; exit $status";
    return new Program(directory, List.of("unshare", "-rm", "sh", "-c", script, "sh"));
  }

  /** Whoever has no right but what the files' modes give him; root is made such a one. */
  private Program reader() throws IOException {
    boolean root = Files.getAttribute(directory, "unix:uid").equals(0);
    return new Program(
        directory, root ? List.of("setpriv", "--inh-caps=-all", "--bounding-set=-all") : List.of());
  }

  @Test
  void aFullDiskIsSaidAndNothingIsLeftOnIt() throws IOException {
    program.run("ledger", "backup", "kept").orThrow();
    String full = ": there is no room left on its disk. Make room there.\n";
    for (int kilobytes : new int[] {8, 24, 48}) {
      Program small = onDisk("size=" + kilobytes + "k", "true");
      for (List<String> command :
          List.of(
              List.of("ledger", "backup", "disk/monday"),
              List.of("ledger", "restore", "kept", "--data=disk/data"),
              List.of("ledger", "create", "--data=disk/new"))) {
        Program.Ended ended = small.run(command.toArray(String[]::new));
        assertThat(ended.status()).as(command + " " + ended.err()).isEqualTo(4);
        assertThat(ended.err()).as(command.toString()).contains("disk/").endsWith(full);
        assertThat(Files.readString(directory.resolve("left"))).as(command.toString()).isEmpty();
      }
    }
  }

  @Test
  void aBackupOnADiskMountedReadOnlyIsReadAsItIs() throws IOException {
    program.run("ledger", "backup", "kept").orThrow();
    Program mounted = onDisk("size=1m", "cp kept/* disk && mount -o remount,ro,size=1m none disk");
    assertThat(mounted.run("ledger", "verify", "--data=disk").orThrow())
        .startsWith("Verified: 2 entries");
    assertThat(mounted.run("trace", "--data=disk").orThrow()).contains("badge-07");
    Program.Ended refused = mounted.run("ledger", "backup", "disk/monday");
    assertThat(refused.status()).isEqualTo(4);
    assertThat(refused.err())
        .contains("disk/monday.unfinished cannot be written: read-only file system.");
  }

  @Test
  void whoeverMayOnlyReadReadsALogAtRestAndOneAtWork() throws Exception {
    mode("r-xr-x---");
    reads();
    mode("rwxr-x---");
    try (SqliteLedger ledger =
        SqliteLedger.open(new LedgerFiles(directory.resolve("witnessmark-data")))) {
      ledger.probe();
      assertThat(ledger.live()).isNotNull();
      mode("r-xr-x---");
      reads();
      mode("rwxr-x---");
    }
  }

  private void reads() throws IOException {
    Program reader = reader();
    assertThat(reader.run("ledger", "verify").orThrow()).startsWith("Verified: 2 entries");
    assertThat(reader.run("trace").orThrow()).contains("badge-07");
    assertThat(reader.run("ledger", "export", "--jsonl").orThrow().lines()).hasSize(2);
    Path backup = directory.resolve("copy");
    reader.run("ledger", "backup", backup.toString()).orThrow();
    try (Stream<Path> all = Files.list(backup)) {
      for (Path file : all.toList()) {
        Files.delete(file);
      }
    }
    Files.delete(backup);
  }

  @Test
  void whatSuchAUserCannotReadIsSaidWithTheWayOut() throws Exception {
    Path data = directory.resolve("witnessmark-data");
    List<Path> parts = new ArrayList<>();
    try (SqliteLedger ledger = SqliteLedger.open(new LedgerFiles(data))) {
      ledger.probe();
      Files.createDirectory(directory.resolve("killed"));
      for (String part : List.of("ledger.db", "ledger.db-wal", "ledger.pub")) {
        parts.add(Files.copy(data.resolve(part), directory.resolve("killed").resolve(part)));
      }
    }
    Path killed = directory.resolve("killed");
    Files.setPosixFilePermissions(killed, PosixFilePermissions.fromString("r-xr-x---"));
    for (String command : List.of("trace", "job status", "ledger verify")) {
      List<String> words = new ArrayList<>(List.of(command.split(" ")));
      words.add("--data=killed");
      Program.Ended ended = reader().run(words.toArray(String[]::new));
      assertThat(ended.status()).as(ended.command()).isEqualTo(4);
      assertThat(ended.err())
          .startsWith(
              "killed/ledger.db cannot be opened as a ledger: its newest entries are in"
                  + " ledger.db-wal, which SQLite reads only where it may write beside it")
          .contains("Copy all its files but ledger.key to a directory of your own");
    }
    Files.setPosixFilePermissions(killed, PosixFilePermissions.fromString("rwxr-x---"));
    // That way out leads there.
    assertThat(reader().run("ledger", "verify", "--data=killed").orThrow())
        .startsWith("Verified: 2 entries");
    assertThat(parts).hasSize(3);
  }
}
