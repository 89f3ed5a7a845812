package witnessmark.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.awaitility.Awaitility.await;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Base64;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.bench.DaemonProcess;
import witnessmark.bench.Json;
import witnessmark.bench.Mosquitto;
import witnessmark.bench.Program;
import witnessmark.bench.Sqlite;
import witnessmark.bench.Workshop;
import witnessmark.ledger.verify.ExportRoot;

/** The log of a finished job, changed by somebody who has the file and the sqlite3 shell. */
class TamperIT {
  /** Entries 0 to 13: five of the furniture, then the job from opening to closing. */
  private static final int SIZE = 14;

  private static final String REFUSED =
      "The end of the log witnessmark-data/ledger.db is not as it was signed, so nothing may be added to it."
          + " Run: witnessmark ledger verify --data witnessmark-data\n";

  @TempDir private static Path finished;
  @TempDir private Path directory;
  private Program program;
  private Sqlite file;

  @BeforeAll
  static void finishAJob() {
    try (Mosquitto broker = Mosquitto.start(finished)) {
      Workshop shop = Workshop.furnished(finished).on(broker);
      shop.open("RAM-210", "ATR-26-0147", "bench-1");
      shop.run("attest", "J-5", "frame-check", "--by", "badge-07");
      try (DaemonProcess daemon = shop.daemon(broker)) {
        for (int event = 1; event <= 6; event++) {
          broker.publish(
              "witnessmark/v1/bench-1/torque",
              List.of(
                  "{\"wrench\":\"TW-0417\",\"event\":%d,\"torque\":\"%s\",\"unit\":\"N.m\",\"angle\":\"40\"}"
                      .formatted(event, event <= 4 ? "33.0" : "45.0")));
        }
        await()
            .atMost(Duration.ofSeconds(20))
            .until(() -> shop.ledger().number("SELECT count(*) FROM entry;") == SIZE - 1);
        daemon.stop();
      }
      shop.run("job", "close", "J-5", "--by", "badge-07");
    }
  }

  @BeforeEach
  void copy() throws IOException {
    program = new Program(directory);
    Path data = Files.createDirectory(directory.resolve("witnessmark-data"));
    try (Stream<Path> files = Files.list(finished.resolve("witnessmark-data"))) {
      for (Path f : files.toList()) {
        Files.copy(f, data.resolve(f.getFileName()));
      }
    }
    file = new Sqlite(data.resolve("ledger.db"));
  }

  @Test
  void theTriggersKeepHonestHandsOff() {
    for (String change :
        List.of(
            "UPDATE entry SET bytes = x'00' WHERE n = 3;",
            "DELETE FROM entry WHERE n = 13;",
            "INSERT INTO entry VALUES (99, x'00', x'00');")) {
      assertThatThrownBy(() -> file.run(change))
          .as(change)
          .isInstanceOf(AssertionError.class)
          .hasMessageContaining("the log ");
    }
    assertThat(program.run("ledger", "verify").orThrow()).startsWith("Verified: 14 entries");
  }

  @Test
  void anyByteChangedIsFoundAndItsEntryNamed() {
    long seed = new Random().nextLong();
    Random random = new Random(seed);
    for (int round = 0; round < 8; round++) {
      int n = random.nextInt(SIZE);
      byte[] bytes =
          HexFormat.of()
              .parseHex(file.run("SELECT hex(bytes) FROM entry WHERE n = " + n + ";").get(0));
      byte[] changed = bytes.clone();
      int at = random.nextInt(bytes.length);
      changed[at] ^= (byte) (1 + random.nextInt(255));
      store(n, changed);
      assertFound("seed " + seed + ", byte " + at + " of entry " + n, "entry " + n + ": ");
      store(n, bytes);
    }
    assertThat(program.run("ledger", "verify").orThrow()).startsWith("Verified: 14 entries");
  }

  @Test
  void aReadingMadeBetterIsFoundThoughEveryDerivedRowFits() {
    file.unguarded(
        "UPDATE entry SET bytes = CAST(replace(CAST(bytes AS TEXT), '33.0', '33.1') AS BLOB) WHERE n = 8;");
    Program.Ended verify =
        assertFound(
            "33.0 made 33.1", "entry 8: its link does not follow from entry 7 and its bytes");
    assertThat(verify.out())
        .contains("checkpoint: signs the root ")
        .contains(": the entries named are not those that were signed\n");
  }

  @Test
  void anEntryRemovedIsFoundAndNamed() {
    file.unguarded("DELETE FROM entry WHERE n = 9;", "DELETE FROM trace WHERE n = 9;");
    assertFound("entry 9 removed", "entry 9: missing: the row was removed");
  }

  @Test
  void theLastEntriesCutOffAreFoundAndNamed() {
    file.unguarded("DELETE FROM entry WHERE n > 11;", "DELETE FROM trace WHERE n > 11;");
    assertFound(
        "the end cut off",
        "entries 12 to 13: missing: the checkpoint signs 14 entries; the end of the log was cut off");
  }

  @Test
  void twoEntriesSwappedAreFoundAndNamed() {
    file.unguarded(
        "UPDATE entry SET n = -1 WHERE n = 8;",
        "UPDATE entry SET n = 8 WHERE n = 10;",
        "UPDATE entry SET n = 10 WHERE n = -1;");
    Program.Ended verify = assertFound("8 and 10 swapped", "entry 8: moved: made as entry 10 ");
    assertThat(verify.out()).contains("entry 10: moved: made as entry 8 ");
  }

  @Test
  void anEntryAppendedBehindTheDaemonsBackIsFoundAndNothingGoesOnTopOfIt() {
    append();
    assertFound(
        "an entry appended",
        "entry 14: appended without the log's key: the checkpoint signs 14 entries");
    Program.Ended command = program.run("operator", "enrol", "badge-12");
    assertThat(command.status()).isEqualTo(4);
    assertThat(command.err()).isEqualTo(REFUSED);
    Workshop shop = Workshop.in(directory);
    try (Mosquitto broker = Mosquitto.start(directory);
        DaemonProcess daemon = shop.on(broker).daemon()) {
      assertThat(daemon.status()).isEqualTo(4);
      assertThat(daemon.log()).endsWith(REFUSED);
    }
  }

  @Test
  void aRunningDaemonRecordsNothingOnAChangedEndAndGoesOnWhenItIsAsSignedAgain() {
    Workshop shop = Workshop.in(directory);
    try (Mosquitto broker = Mosquitto.start(directory);
        DaemonProcess daemon = shop.on(broker).daemon(broker)) {
      append();
      broker.publish(
          "witnessmark/v1/bench-1/torque",
          List.of("{\"wrench\":\"TW-0417\",\"event\":7,\"torque\":\"33\",\"unit\":\"N.m\"}"));
      await()
          .atMost(Duration.ofSeconds(20))
          .untilAsserted(
              () ->
                  assertThat(Json.fields(health(broker)))
                      .containsEntry("state", "degraded")
                      .containsEntry("reason", "Nothing can be recorded: " + REFUSED.strip()));
      assertThat(file.number("SELECT count(*) FROM entry;")).isEqualTo(15);
      file.unguarded("DELETE FROM entry WHERE n = 14;");
      await()
          .atMost(Duration.ofSeconds(20))
          .untilAsserted(
              () -> assertThat(Json.fields(health(broker))).containsEntry("state", "ok"));
      assertThat(file.run("SELECT number FROM trace WHERE n = 14;")).containsExactly("7");
      assertThat(daemon.stop()).isEqualTo(DaemonProcess.TERMINATED);
    }
    assertThat(program.run("ledger", "verify").orThrow()).startsWith("Verified: 15 entries");
  }

  @Test
  void theRootOfTheExportIsTheOneSigned() {
    List<String> lines = program.run("ledger", "export", "--jsonl").orThrow().lines().toList();
    String root = Base64.getEncoder().encodeToString(ExportRoot.of(lines));
    List<String> checkpoint = program.run("ledger", "checkpoint").orThrow().lines().toList();
    assertThat(checkpoint.get(1)).isEqualTo("14");
    assertThat(checkpoint.get(2)).isEqualTo(root);
    assertThat(program.run("ledger", "verify").orThrow())
        .isEqualTo("Verified: 14 entries, root " + root + ".\n");
  }

  private void append() {
    file.unguarded("INSERT INTO entry SELECT 14, bytes, link FROM entry WHERE n = 13;");
  }

  private static JsonNode health(Mosquitto broker) {
    return Json.of(broker.take("witnessmark/v1/shop-1/health", 1, Duration.ofSeconds(5)).get(0));
  }

  private void store(int n, byte[] bytes) {
    file.unguarded(
        "UPDATE entry SET bytes = x'" + HexFormat.of().formatHex(bytes) + "' WHERE n = " + n + ";");
  }

  private Program.Ended assertFound(String what, String named) {
    Program.Ended verify = program.run("ledger", "verify");
    assertThat(verify.status()).as(what + ":\n" + verify.out()).isEqualTo(1);
    assertThat(verify.out().lines().toList())
        .as(what)
        .anyMatch(line -> line.startsWith(named))
        .last()
        .asString()
        .startsWith("DOES NOT VERIFY: ");
    return verify;
  }
}
