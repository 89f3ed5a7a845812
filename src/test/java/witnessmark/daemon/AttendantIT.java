package witnessmark.daemon;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.io.OutputStream;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.bench.DaemonProcess;
import witnessmark.bench.HeldThread;
import witnessmark.bench.Mosquitto;
import witnessmark.bench.NotifySocket;
import witnessmark.bench.Workshop;

/** What a service manager is told by the real daemon: ready, alive, stopping, and not alive. */
class AttendantIT {
  private static final String ALIVE = "WATCHDOG=1";
  private static final Duration LONG = Duration.ofSeconds(60);

  @TempDir Path directory;
  private Mosquitto broker;
  private Workshop shop;
  private NotifySocket manager;

  @BeforeEach
  void aManagerListens() throws Exception {
    broker = Mosquitto.start(directory);
    shop = Workshop.furnished(directory).on(broker);
    manager = NotifySocket.in(directory);
  }

  @AfterEach
  void end() {
    manager.close();
    broker.close();
  }

  private DaemonProcess watched(Duration patience) {
    Map<String, String> asked =
        Map.of(
            "NOTIFY_SOCKET",
            manager.path().toString(),
            "WATCHDOG_USEC",
            Long.toString(TimeUnit.NANOSECONDS.toMicros(patience.toNanos())));
    return DaemonProcess.start(shop.program(), shop.config(), asked);
  }

  @Test
  void itIsReadyThenAliveThenStopping() {
    try (DaemonProcess daemon = watched(Duration.ofSeconds(2))) {
      await().atMost(LONG).until(() -> manager.count(ALIVE) >= 3);
      assertThat(manager.lines().get(0)).isEqualTo("READY=1");
      assertThat(manager.lines()).contains("STATUS=5 entries; ok");
      assertThat(daemon.stop()).isEqualTo(DaemonProcess.TERMINATED);
      await().atMost(LONG).until(() -> manager.count("STOPPING=1") == 1);
      assertThat(manager.lines()).endsWith("STOPPING=1", "STATUS=Stopping");
    }
  }

  @Test
  void aWriterThatDoesNotComeBackGivesNoSignOfLife() throws Exception {
    try (DaemonProcess daemon = watched(Duration.ofSeconds(4))) {
      await().atMost(LONG).until(() -> manager.count(ALIVE) >= 2);
      HeldThread held = HeldThread.of(daemon.pid(), "writer");
      try {
        await()
            .atMost(LONG)
            .until(() -> manager.count("STATUS=The writer is stuck: nothing is recorded") >= 1);
        long before = manager.count(ALIVE);
        await()
            .atMost(LONG)
            .until(() -> manager.count("STATUS=The writer is stuck: nothing is recorded") >= 5);
        assertThat(manager.count(ALIVE)).isEqualTo(before);
        assertThat(daemon.log()).containsOnlyOnce("the writer is stuck");
      } finally {
        held.close();
      }
      long before = manager.count(ALIVE);
      await().atMost(LONG).until(() -> manager.count(ALIVE) > before + 1);
    }
  }

  @Test
  void aWriterThatWaitsForAnotherProcessLivesAndSaysWhatItWaitsFor() throws Exception {
    try (DaemonProcess daemon = watched(Duration.ofSeconds(32)).awaitUp("broker")) {
      Process other =
          new ProcessBuilder("sqlite3", shop.ledger().file().toString())
              .redirectError(ProcessBuilder.Redirect.INHERIT)
              .start();
      try (OutputStream typed = other.getOutputStream()) {
        typed.write(".timeout 20000\nBEGIN IMMEDIATE;\nSELECT 1;\n".getBytes(UTF_8));
        typed.flush();
        assertThat(other.getInputStream().read()).isEqualTo('1');
        broker.publish(
            "witnessmark/v1/bench-1/torque",
            List.of("{\"wrench\":\"TW-0417\",\"event\":1,\"torque\":\"33\",\"unit\":\"N.m\"}"));
        await().atMost(LONG).untilAsserted(() -> assertThat(manager.lines()).anyMatch(this::waits));
        long before = manager.count(ALIVE);
        await().atMost(LONG).until(() -> manager.count(ALIVE) >= before + 2);
        assertThat(manager.lines().stream().filter(this::waits)).hasSizeGreaterThanOrEqualTo(2);
      } // the shell ends at the end of its input, and with it the transaction
      await().atMost(LONG).until(() -> shop.ledger().number("SELECT count(*) FROM entry;") == 6);
      assertThat(manager.lines()).noneMatch(l -> l.contains("stuck"));
      assertThat(daemon.ended()).isFalse();
    }
  }

  private boolean waits(String line) {
    return line.startsWith("STATUS=5 entries; Nothing can be recorded: ");
  }
}
