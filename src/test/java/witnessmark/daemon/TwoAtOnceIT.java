package witnessmark.daemon;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.bench.DaemonProcess;
import witnessmark.bench.Json;
import witnessmark.bench.Mosquitto;
import witnessmark.bench.PtyPair;
import witnessmark.bench.Workshop;

/** Several processes and several sources that work on one log. */
class TwoAtOnceIT {
  private static final Duration LONG = Duration.ofSeconds(40);

  @TempDir Path directory;
  private Mosquitto broker;
  private Workshop shop;

  @BeforeEach
  void begin() {
    broker = Mosquitto.start(directory, "autosave_interval 3600", "autosave_on_changes false");
    shop = Workshop.furnished(directory).on(broker);
  }

  @AfterEach
  void end() {
    broker.close();
  }

  @Test
  void aSecondDaemonOnTheSameDirectoryIsRefused() {
    try (DaemonProcess first = shop.daemon(broker);
        DaemonProcess second = shop.daemon()) {
      assertThat(second.status()).isEqualTo(4);
      assertThat(second.log())
          .isEqualTo(
              "Another daemon works on witnessmark-data"
                  + ". Stop that one first, or give this one its own directory with --data.\n");
      assertThat(first.ended()).isFalse();
      first.kill();
      try (DaemonProcess third = shop.daemon()) {
        third.awaitListening();
        assertThat(third.stop()).isEqualTo(DaemonProcess.TERMINATED);
      }
    }
  }

  @Test
  void commandsAndEventsUnderLoadEndUpInOneLog() throws Exception {
    int events = 2400;
    try (DaemonProcess daemon = shop.daemon(broker)) {
      Process load =
          shop.program()
              .simulator(
                  directory.resolve("burst.log"),
                  "burst",
                  "--broker",
                  broker.url(),
                  "--station",
                  "bench-9",
                  "--count",
                  "" + events,
                  "--rate",
                  "150",
                  "--wrench",
                  "TW-0901");
      await().atMost(LONG).until(() -> recorded() > 100);
      for (int i = 1; i <= 3; i++) {
        String job = shop.open("RAM-210", "ATR-26-000" + i, "bench-" + i);
        shop.run("attest", job, "frame-check", "--by", "badge-07");
        await()
            .atMost(LONG)
            .untilAsserted(() -> assertThat(expected(job)).isEqualTo("tighten " + job));
      }
      assertThat(load.waitFor()).isZero();
      await().atMost(LONG).until(() -> recorded() == events);
      assertThat(daemon.stop()).isEqualTo(DaemonProcess.TERMINATED);
    }
    assertThat(shop.ledger().run("SELECT kind, count(*) FROM trace WHERE n > 4 GROUP BY kind;"))
        .containsExactly("attested|3", "job-opened|3", "torque|2400");
    assertThat(
            shop.ledger().number("SELECT count(DISTINCT number) FROM trace WHERE kind = 'torque';"))
        .isEqualTo(events);
    assertThat(shop.run("ledger", "verify")).startsWith("Verified: 2411 entries, root ");
  }

  private long recorded() {
    return shop.ledger().number("SELECT count(*) FROM trace WHERE kind = 'torque';");
  }

  private String expected(String job) {
    return broker
        .take("witnessmark/v1/" + stationOf(job) + "/expect", 1, Duration.ofSeconds(2))
        .stream()
        .map(Json::of)
        .map(e -> e.path("state").asText() + " " + e.path("job").asText())
        .findFirst()
        .orElse("nothing retained");
  }

  private String stationOf(String job) {
    return shop.ledger().run("SELECT station FROM job WHERE job = '" + job + "';").get(0);
  }

  @Test
  void oneJobTakesAWrenchOnTheAirAndOneOnACable() throws Exception {
    Path cableDirectory = Files.createDirectory(directory.resolve("cable"));
    try (PtyPair cable = PtyPair.plug(cableDirectory)) {
      shop.on(cable, "bench-1").enrol("TW-0502", "60 N.m");
      assertThat(shop.open("RAM-210", "ATR-26-0147", "bench-1")).isEqualTo("J-6");
      shop.run("attest", "J-6", "frame-check", "--by", "badge-07");
      try (DaemonProcess daemon = shop.daemon(broker)) {
        for (int event = 1; event <= 3; event++) {
          broker.publish(
              "witnessmark/v1/bench-1/torque",
              List.of(
                  "{\"wrench\":\"TW-0417\",\"event\":"
                      + event
                      + ",\"torque\":\"33\",\"unit\":\"N.m\",\"angle\":\"40\"}"));
          int both = 2 * event - 1;
          await().atMost(LONG).until(() -> recorded() == both);
          String frame = frame("TW-0502", event, event < 3 ? "33" : "45");
          cable.write(frame.getBytes(US_ASCII));
          await().atMost(LONG).until(() -> recorded() == both + 1);
        }
        assertThat(daemon.stop()).isEqualTo(DaemonProcess.TERMINATED);
      }
    }
    assertThat(shop.ledger().run("SELECT wrench, number, fastener, effect FROM trace WHERE n > 7;"))
        .containsExactly(
            "TW-0417|1|carrier-left/1|credited",
            "TW-0502|1|carrier-left/3|credited",
            "TW-0417|2|carrier-left/2|credited",
            "TW-0502|2|carrier-left/4|credited",
            "TW-0417|3|cross-member/1|again",
            "TW-0502|3|cross-member/1|credited");
    assertThat(shop.run("ledger", "verify")).startsWith("Verified: 14 entries");
  }

  private static String frame(String wrench, int event, String torque) {
    return ByHandSerialIT.frame(wrench + "|" + event + "||" + torque + "|N.m|40|cw");
  }
}
