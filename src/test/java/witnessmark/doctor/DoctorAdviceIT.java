package witnessmark.doctor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import witnessmark.bench.DaemonProcess;
import witnessmark.bench.Program;
import witnessmark.bench.Workshop;

/** What the doctor says is to be done, where another advice would do harm. */
class DoctorAdviceIT extends Patient {
  @Test
  void aPortThatIsNoneIsAFaultAndTheRestIsLookedAt() throws IOException {
    config("url.toml", "[[mqtt]]\nname = \"far\"\nurl = \"tcp://127.0.0.1:65536\"\n");
    List<JsonNode> found = findings("--config", "url.toml");
    assertThat(marked("bad", found))
        .containsExactly(
            "configuration: url.toml:8:1: port 65536 of the url is not from 1 to 65535 -> Write e.g."
                + " \"tcp://127.0.0.1:1883\" or \"ssl://host:8883\".");
    assertThat(found).extracting(f -> f.path("area").asText()).contains("ledger", "clock");
    try (DaemonProcess daemon =
        DaemonProcess.start(shop.program(), directory.resolve("url.toml"))) {
      assertThat(daemon.status()).isEqualTo(3);
    }
  }

  @Test
  void aFileThatIsNotUtf8() throws IOException {
    Files.write(directory.resolve("latin.toml"), new byte[] {'#', '\n', (byte) 0xfc, '\n'});
    assertThat(bad("--config", "latin.toml"))
        .containsExactly(
            "configuration: latin.toml:2:1: the file is not UTF-8 from here on -> Save it as"
                + " UTF-8.");
    Program.Ended run = shop.attempt("run", "--config", "latin.toml");
    assertThat(run.status()).isEqualTo(3);
    assertThat(run.err())
        .isEqualTo("latin.toml:2:1: the file is not UTF-8 from here on; save it as UTF-8\n");
  }

  @Test
  void theCheckpointsOutside() throws IOException {
    Path drop = Files.createDirectory(directory.resolve("outside"));
    config("drop.toml", "[checkpoints]\ndrop = \"outside\"\n");
    assertThat(findings("--config", "drop.toml"))
        .extracting(f -> f.path("found").asText())
        .contains(drop + " can be written.", "None was dropped yet.");
    Path first = drop.resolve("checkpoint-000000000005.txt");
    Files.writeString(first, shop.run("ledger", "checkpoint"));
    assertThat(findings("--config", "drop.toml"))
        .extracting(f -> f.path("found").asText())
        .contains("The log goes on from all that were dropped there (1).");
    Path note = Files.writeString(drop.resolve("z-notes.txt"), "not one\n");
    assertThat(marked("warn", findings("--config", "drop.toml")))
        .anyMatch(
            f -> f.startsWith("checkpoints: " + note + " is no checkpoint, so ledger verify"));
    Workshop other = Workshop.empty(Files.createDirectory(directory.resolve("other")));
    Files.writeString(first, other.run("ledger", "checkpoint"));
    assertThat(bad("--config", "drop.toml"))
        .singleElement()
        .asString()
        .startsWith("checkpoints: " + first + ": The earlier checkpoint is of the log ")
        .contains("witnessmark ledger verify --since " + drop);
    Files.delete(first);
    Files.delete(note);
    assertThat(marked("warn", findings("--config", "drop.toml", "--data", directory.toString())))
        .anyMatch(f -> f.startsWith("checkpoints: " + drop + " lies in the data directory"));
  }

  @Test
  void aCheckpointOfWhatTheLogHasLostIsNamed() throws IOException {
    Path drop = Files.createDirectory(directory.resolve("outside"));
    config("drop.toml", "[checkpoints]\ndrop = \"outside\"\n");
    Path data = directory.resolve("witnessmark-data");
    Path kept = Files.copy(data.resolve("ledger.db"), directory.resolve("older.db"));
    shop.run("operator", "enrol", "badge-12");
    Files.writeString(
        drop.resolve("checkpoint-000000000006.txt"), shop.run("ledger", "checkpoint"));
    shop.run("ledger", "verify");
    Files.deleteIfExists(data.resolve("ledger.db-wal"));
    Files.deleteIfExists(data.resolve("ledger.db-shm"));
    Files.move(kept, data.resolve("ledger.db"), StandardCopyOption.REPLACE_EXISTING);
    assertThat(bad("--config", "drop.toml"))
        .singleElement()
        .asString()
        .contains("History was rewritten: the earlier checkpoint signs 6 entries, the log has 5.");
  }

  @Test
  void partsOfALogLeadToNoNewOne() throws IOException {
    Files.delete(directory.resolve("witnessmark-data/ledger.db"));
    assertThat(bad())
        .singleElement()
        .asString()
        .contains("witnessmark-data holds parts of a log (", "ledger.key, ledger.pub")
        .contains("put it back beside them")
        .contains("witnessmark ledger restore BACKUP --data witnessmark-data")
        .doesNotContain("ledger create");
  }

  @Test
  void whatTheDaemonWarnsOfIsBadHere() throws IOException {
    Path data = directory.resolve("witnessmark-data");
    Files.setPosixFilePermissions(data, PosixFilePermissions.fromString("rwxrwx---"));
    Files.setPosixFilePermissions(
        data.resolve("ledger.db"), PosixFilePermissions.fromString("rw-rw----"));
    assertThat(bad())
        .containsExactly(
            "data directory: witnessmark-data may be written by others (rwxrwx---). -> chmod go-w"
                + " witnessmark-data",
            "data directory: witnessmark-data/ledger.db may be written by others (rw-rw----). ->"
                + " chmod go-w witnessmark-data/ledger.db");
  }

  @Test
  void aNewerFormatAsksForTheNewerProgramAlone() {
    shop.ledger().run("PRAGMA user_version = 2;");
    assertThat(bad())
        .filteredOn(f -> f.startsWith("ledger: It does not open"))
        .singleElement()
        .asString()
        .endsWith(
            "has format version 2; this program knows up to 1. -> Use the newer program that wrote"
                + " it.");
  }

  @Test
  void aKeyIsNotInEveryBackup() throws IOException {
    Files.delete(directory.resolve("witnessmark-data/ledger.key"));
    assertThat(bad())
        .filteredOn(f -> f.startsWith("key: "))
        .singleElement()
        .asString()
        .contains("a backup that was made with --with-key")
        .contains("&& chown " + Files.getOwner(directory.resolve("witnessmark-data")).getName())
        .contains("&& chmod 600 witnessmark-data/ledger.key");
  }

  @Test
  void aPortThatIsAFileOrAnotherDevice() throws IOException {
    for (String path : List.of("/etc/passwd", "/dev", "/dev/null")) {
      shop.write("demo-line.toml", Files.readString(Path.of("demo-data/profiles/demo-line.toml")));
      config(
          "none.toml",
          "[[serial]]\nname = \"cable\"\nport = \"%s\"\nstation = \"bench-1\"\nprofile = \"demo-line.toml\"\n"
              .formatted(path));
      assertThat(bad("--config", "none.toml"))
          .singleElement()
          .asString()
          .startsWith("port cable: " + path + " is not a serial port. -> Name the port in this")
          .doesNotContain("fuser", "end it");
    }
    try (DaemonProcess daemon =
        DaemonProcess.start(shop.program(), directory.resolve("none.toml")).awaitListening()) {
      await()
          .atMost(Duration.ofSeconds(20))
          .until(
              () ->
                  daemon
                      .log()
                      .contains(
                          "port /dev/null is not a serial port; correct port in the configuration"));
    }
  }

  @Test
  void healthOfABridgeThatIsNotTheRunningOne() throws Exception {
    Process retained =
        new ProcessBuilder(
                "mosquitto_pub",
                "-r",
                "-p",
                "" + broker.port(),
                "-t",
                "witnessmark/v1/shop-1/health",
                "-m",
                "{\"bridge\":\"shop-1\",\"state\":\"ok\",\"since\":\"2026-11-20T10:00:00Z\"}")
            .start();
    assertThat(retained.waitFor()).isZero();
    assertThat(marked("warn", findings("--config", config())))
        .anyMatch(
            f ->
                f.startsWith(
                    "broker broker: A bridge \"shop-1\" says there that it is at work since"
                        + " 2026-11-20T10:00:00Z, though no daemon works on this data directory"));
  }
}
