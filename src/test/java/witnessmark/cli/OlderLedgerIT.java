package witnessmark.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.bench.DaemonProcess;
import witnessmark.bench.Mosquitto;
import witnessmark.bench.Program;
import witnessmark.bench.Sqlite;
import witnessmark.bench.Workshop;

/** A data directory that an earlier version of the program began goes on under this one. */
class OlderLedgerIT {
  private static final String ROOT = "hMLceDfwR5metlbmuvl+JNxZsA52C+mu4Q57LQGLWUw=";

  @TempDir Path directory;
  private Workshop shop;

  @BeforeEach
  void theOldDirectoryLiesInPlace() throws Exception {
    Path data = Files.createDirectory(directory.resolve("witnessmark-data"));
    for (String kind : List.of("key", "pub")) {
      Path file = data.resolve("ledger." + kind);
      Files.writeString(file, kept(kind));
      // of a key that others may read the daemon warns
      Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-------"));
    }
    new Sqlite(data.resolve("ledger.db")).run("PRAGMA journal_mode=WAL;", kept("sql"));
    shop = Workshop.in(directory);
  }

  private static String kept(String kind) throws Exception {
    try (InputStream in =
        OlderLedgerIT.class.getResourceAsStream("/witnessmark/upgrade/first-demo." + kind)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  @Test
  void itVerifiesWithTheRootThatTheOldProgramNamed() {
    assertThat(shop.run("ledger", "verify"))
        .isEqualTo("Verified: 90 entries, root " + ROOT + ".\n");
  }

  @Test
  void itIsReadAsItWasMeant() {
    assertThat(shop.run("trace", "--unit", "ATR-26-0147", "--record"))
        .contains("J-6")
        .containsPattern("MISSING\\s+none");
    assertThat(shop.run("job", "status", "J-6")).contains("ATR-26-0147").contains("closed");
    assertThat(shop.run("nonconformities")).contains("settled; replace by badge-11 (entry 57)");
    assertThat(shop.run("trace", "--unit", "ATR-26-0147", "--jsonl").lines().count()).isEqualTo(84);
  }

  @Test
  void itGoesOnAndProvesWhatStoodThereBefore() {
    Path kept = shop.write("kept.txt", shop.run("ledger", "checkpoint"));
    assertThat(shop.run("operator", "enrol", "badge-31", "--name", "bench 3"))
        .contains("(entry 90)");
    try (Mosquitto broker = Mosquitto.start(directory);
        DaemonProcess daemon = shop.on(broker).daemon(broker)) {
      broker.publish(
          "witnessmark/v1/bench-1/torque",
          List.of("{\"wrench\":\"TW-0417\",\"event\":900,\"torque\":\"33.0\",\"unit\":\"N.m\"}"));
      await().until(() -> shop.ledger().number("SELECT count(*) FROM entry;") == 92);
      assertThat(daemon.stop()).isEqualTo(DaemonProcess.TERMINATED);
    }
    assertThat(shop.run("ledger", "verify", "--since", kept.toString()))
        .startsWith("Verified: 92 entries")
        .contains("The first 90 are those that the kept checkpoint signs.");
  }

  @Test
  void itsIndexesBecomeThoseThatThisVersionLooksUpBy() {
    String asked = "SELECT sql FROM sqlite_schema WHERE name = 'trace_seen';";
    assertThat(shop.ledger().run(asked).get(0)).contains("(wrench, fingerprint)");
    shop.run("operator", "enrol", "badge-31");
    assertThat(shop.ledger().run(asked).get(0)).contains("(wrench, number, fingerprint)");
    assertThat(shop.run("ledger", "verify")).startsWith("Verified: 91 entries");
  }

  @Test
  void aFileOfANewerFormatIsLeftAloneAndTheNewerProgramAskedFor() {
    shop.ledger().run("PRAGMA user_version=2;");
    Path file = Path.of("witnessmark-data", "ledger.db");
    for (Program.Ended told :
        List.of(
            shop.attempt("operator", "enrol", "badge-31"),
            shop.attempt("job", "status"),
            shop.attempt("ledger", "checkpoint"))) {
      assertThat(told.status()).as(told.command()).isEqualTo(4);
      assertThat(told.err())
          .isEqualTo(
              file
                  + " has format version 2; this program knows up to 1."
                  + " Use the newer program that wrote it.\n");
    }
    assertThat(shop.attempt("ledger", "verify").err()).contains("has format version 2");
    assertThat(shop.ledger().number("SELECT count(*) FROM entry;")).isEqualTo(90);
  }
}
