package witnessmark.log;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import witnessmark.bench.DaemonProcess;
import witnessmark.bench.Json;
import witnessmark.bench.Mosquitto;
import witnessmark.bench.Workshop;
import witnessmark.trial.faults.SmallDisk;

/** What comes off a wire, in the daemon's own log and on people's screens. */
class LogsIT {
  private static final Duration LONG = Duration.ofSeconds(40);

  /** A right-to-left override, and CSI 31 m in its one-character form. */
  private static final String EVIL = "\u202e\u009b31m";

  @TempDir Path directory;
  private Mosquitto broker;
  private Workshop shop;

  @BeforeEach
  void begin() {
    broker = Mosquitto.start(directory);
    shop = Workshop.furnished(directory).on(broker);
  }

  @AfterEach
  void end() {
    broker.close();
  }

  private void sendEvil() {
    String escaped = "\\u001b[2J\\n<0>Bridge: forged\\r\\u202e";
    broker.publish(
        "witnessmark/v1/bench-1/torque",
        List.of(
            "{\"wrench\":\"TW" + escaped + "\",\"torque\":\"33\",\"unit\":\"N.m\"}",
            "{\"wrench\":\"TW-0417\",\"torque\":\"33\",\"unit\":\"" + escaped + "\"}",
            "{\"wrench\":\"TW-0417\",\"torque\":\"33\",\"unit\":\"N.m\",\"note\":\""
                + EVIL
                + "\"}"));
    broker.publish(
        "witnessmark/v1/bench-1/torque",
        "{\"wrench\":\"TW-0417\",\n\"torque\":\"33\",\n\"unit\":\"N.m\"}"
            .getBytes(StandardCharsets.UTF_8));
    broker.publish(
        "witnessmark/v1/bench-1/torque", "\u001b[2J\nforged".getBytes(StandardCharsets.UTF_8));
    broker.publish(
        "witnessmark/v1/bench-1/scan", List.of("{\"scan\":\"a" + escaped + EVIL + "\"}"));
    // a bidi override is a lawful part of a topic
    broker.publish("witnessmark/v1/b\u202e/torque", List.of("{}"));
    await().atMost(LONG).until(() -> entries() == 5 + 7);
  }

  private long entries() {
    return Long.parseLong(shop.ledger().run("SELECT count(*) FROM entry;").get(0));
  }

  @ParameterizedTest
  @ValueSource(strings = {"text", "journal", "json"})
  void nothingThatCameBeginsALineOrReachesTheTerminal(String form) {
    try (DaemonProcess daemon = shop.daemon("--log", form)) {
      await().atMost(LONG).until(() -> daemon.log().matches("(?s).*\"?to\"?[=:]\"UP\".*"));
      sendEvil();
      daemon.stop();
      String line =
          switch (form) {
            case "text" -> "[0-9T:.-]{23}Z (INFO |WARN |ERROR) [A-Z][A-Za-z]+: [ -~]*";
            case "journal" -> "<[346]>[A-Z][A-Za-z]+: [ -~]*";
            default -> "\\{\"time\":[ -~]*}";
          };
      assertThat(daemon.log().lines())
          .hasSizeGreaterThan(3)
          .allMatch(l -> l.matches(line))
          .anyMatch(l -> l.contains("refused, and on record"))
          .noneMatch(l -> l.startsWith("<0>"));
      if (form.equals("json")) {
        for (JsonNode event : daemon.log().lines().map(Json::of).toList()) {
          assertThat(event.path("message").asText()).isNotEmpty();
        }
      }
    }
  }

  @Test
  void peoplesTablesAreAsHarmless() {
    try (DaemonProcess daemon = shop.daemon().awaitUp("broker")) {
      sendEvil();
      daemon.stop();
    }
    String trace = shop.run("trace");
    assertThat(trace.lines()).hasSize(1 + 5 + 7).allMatch(LogsIT::harmless);
    assertThat(trace).contains("\\u001B[2J", "\\u202E");
    for (int n = 5; n < 12; n++) {
      assertThat(shop.run("explain", "" + n).lines()).allMatch(LogsIT::harmless);
      assertThat(shop.run("explain", "" + n)).doesNotContain("\nforged", "\n<0>");
    }
    assertThat(shop.run("trace", "--jsonl").lines()).hasSize(5 + 7).allMatch(LogsIT::harmless);
  }

  private static boolean harmless(String line) {
    return line.codePoints().noneMatch(witnessmark.torque.Visible::hidden);
  }

  @Test
  void passwordsAreInNoLogHoweverMuchIsLogged() throws IOException {
    String secret = "correct-horse-4711";
    shop.write("pw.txt", secret + "\n");
    shop.write(
        "secret.toml",
        "[bridge]\nname = \"shop-1\"\n[[mqtt]]\nname = \"broker\"\nurl = \""
            + broker.url()
            + "\"\nuser = \"witnessmark\"\npassword-file = \"pw.txt\"\n");
    try (DaemonProcess daemon =
        DaemonProcess.start(
                shop.program(),
                directory.resolve("secret.toml"),
                "--log-level",
                "debug",
                "--log-file",
                "bridge.log")
            .awaitUp("broker")) {
      broker.kill();
      await().atMost(LONG).until(() -> daemon.log().contains("link waits"));
      daemon.stop();
      assertThat(daemon.log()).contains(" DEBUG ").doesNotContain(secret);
      assertThat(Files.readString(directory.resolve("bridge.log")))
          .contains("Bridge: listening", " DEBUG ")
          .doesNotContain(secret);
    }
  }

  @Test
  void aLogFileIsTurnedOverAndBounded() throws IOException {
    try (DaemonProcess daemon = shop.daemon("--log-file", "logs/bridge.log")) {
      assertThat(daemon.status()).isEqualTo(4);
      assertThat(daemon.log())
          .isEqualTo(
              "The log file logs/bridge.log cannot be written: there is no directory logs."
                  + " Name one in a directory that this user may write to.\n");
    }
    try (DaemonProcess daemon = shop.daemon("--log-file", "bridge.log").awaitUp("broker")) {
      assertThat(daemon.stop()).isEqualTo(DaemonProcess.TERMINATED);
    }
    try (Stream<Path> files = Files.list(directory)) {
      assertThat(files.filter(f -> f.getFileName().toString().startsWith("bridge.log"))).hasSize(1);
    }
    assertThat(Files.readAllLines(directory.resolve("bridge.log")))
        .anyMatch(l -> l.matches("[0-9T:.-]{23}Z INFO  Bridge: stopped entries=\"5\""));
  }

  @Test
  void aLogFileOnAFullDiskIsToldOnceAndSoIsThatItWorksAgain() throws Exception {
    Path logs = Files.createDirectory(directory.resolve("logs"));
    try (SmallDisk disk = new SmallDisk(logs, 100);
        DaemonProcess daemon =
            shop.under(disk.prefix()).daemon("--log-file", "logs/bridge.log").awaitUp("broker")) {
      disk.fill();
      await().atMost(LONG).until(() -> refused(daemon, "KeptFile: the log file cannot be written"));
      assertThat(daemon.log()).contains("reason=\"No space left on device\"");
      disk.free();
      await().atMost(LONG).until(() -> refused(daemon, "KeptFile: the log file is written again"));
      daemon.stop();
      assertThat(daemon.log().lines().filter(l -> l.contains("KeptFile: "))).hasSize(2);
    }
  }

  /** Sends what is refused for a reason of its own, so that there is something to log. */
  private boolean refused(DaemonProcess daemon, String until) {
    String unit = "\"x" + System.nanoTime() + "\"";
    broker.publish(
        "witnessmark/v1/bench-1/torque",
        List.of("{\"wrench\":\"TW-0417\",\"torque\":\"33\",\"unit\":" + unit + "}"));
    return daemon.log().contains(until);
  }

  @Test
  void aRefusedStartSaysWhyAndNothingElse() {
    shop.ledger().run("DROP TRIGGER entry_remains; DELETE FROM entry WHERE n = 4;");
    try (DaemonProcess daemon = shop.daemon()) {
      assertThat(daemon.status()).isEqualTo(4);
      assertThat(daemon.log())
          .startsWith("The end of the log witnessmark-data/ledger.db is not as it was signed")
          .hasLineCount(1);
    }
  }
}
