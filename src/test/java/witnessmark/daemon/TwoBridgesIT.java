package witnessmark.daemon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
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
import witnessmark.bench.Subscriber;
import witnessmark.bench.Workshop;

/** Two bridges, each with its own log, at one broker. */
class TwoBridgesIT {
  private static final Duration LONG = Duration.ofSeconds(40);

  @TempDir Path directory;
  private Mosquitto broker;
  private Workshop one;
  private Workshop two;

  @BeforeEach
  void begin() throws IOException {
    broker = Mosquitto.start(directory);
    one = Workshop.furnished(Files.createDirectory(directory.resolve("one")));
    two = Workshop.furnished(Files.createDirectory(directory.resolve("two")));
  }

  @AfterEach
  void end() {
    broker.close();
  }

  private DaemonProcess start(Workshop shop, String name, String more) {
    Path config =
        shop.write(
            name + ".toml",
            "[bridge]\nname = \"%s\"\nhealth-every = \"200 ms\"\n\n[[mqtt]]\nname = \"broker\"\nurl = \"%s\"\n%s\n"
                .formatted(name, broker.url(), more));
    return DaemonProcess.start(shop.program(), config).awaitUp("broker");
  }

  private void awaitHealth(String bridge, String state, String reason) {
    await()
        .atMost(LONG)
        .untilAsserted(
            () -> {
              JsonNode health =
                  Json.of(
                      broker
                          .take("witnessmark/v1/" + bridge + "/health", 1, Duration.ofSeconds(5))
                          .get(0));
              assertThat(health.path("state").asText()).isEqualTo(state);
              assertThat(health.path("reason").asText("")).isEqualTo(reason);
            });
  }

  private static String warning(String other) {
    return "bridge \"%s\" answers for the same stations; stop one of the two, or give each its own stations"
        .formatted(other);
  }

  @Test
  void twoThatServeAllStationsWarnOfEachOtherUntilOneIsGone() {
    try (DaemonProcess first = start(one, "shop-1", "")) {
      awaitHealth("shop-1", "ok", "");
      try (DaemonProcess second = start(two, "shop-2", "")) {
        awaitHealth("shop-2", "degraded", "broker: " + warning("shop-1"));
        awaitHealth("shop-1", "degraded", "broker: " + warning("shop-2"));
        assertThat(first.log()).contains("Neighbours: not alone link=\"broker\" detail=");
        assertThat(second.log()).contains("Neighbours: not alone link=\"broker\" detail=");
        assertThat(second.stop()).isEqualTo(DaemonProcess.TERMINATED);
      }
      awaitHealth("shop-1", "ok", "");
    }
  }

  @Test
  void twoThatShareTheStationsLeaveEachOtherAlone() {
    try (DaemonProcess first = start(one, "shop-1", "stations = [\"bench-1\"]");
        DaemonProcess second = start(two, "shop-2", "stations = [\"bench-2\"]");
        Subscriber verdicts = Subscriber.to(broker, "listener", "witnessmark/v1/+/verdict")) {
      awaitHealth("shop-1", "ok", "");
      awaitHealth("shop-2", "ok", "");
      String event = "{\"wrench\":\"TW-0417\",\"event\":%d,\"torque\":\"33\",\"unit\":\"N.m\"}";
      broker.publish("witnessmark/v1/bench-1/torque", List.of(event.formatted(1)));
      verdicts.await(1);
      broker.publish("witnessmark/v1/bench-2/torque", List.of(event.formatted(2)));
      verdicts.await(2);
      assertThat(verdicts.documents())
          .extracting(d -> d.path("source").asText() + " " + d.at("/data/station").asText())
          .containsExactly("witnessmark:shop-1 bench-1", "witnessmark:shop-2 bench-2");
      assertThat(first.stop()).isEqualTo(DaemonProcess.TERMINATED);
      assertThat(second.stop()).isEqualTo(DaemonProcess.TERMINATED);
    }
    for (Workshop shop : List.of(one, two)) {
      assertThat(shop.ledger().number("SELECT count(*) FROM entry WHERE n >= 5;")).isEqualTo(1);
    }
  }

  @Test
  void twoOfOneNameWarnOfEachOtherUntilOneIsGone() {
    String stations = "stations = [\"bench-1\"]";
    try (DaemonProcess first = start(one, "shop-1", stations)) {
      awaitHealth("shop-1", "ok", "");
      first.kill();
    }
    // its last will, and then an earlier run's health, are no other bridge's
    try (DaemonProcess first = start(one, "shop-1", stations)) {
      awaitHealth("shop-1", "ok", "");
      Path config =
          two.write(
              "shop-1.toml",
              ("[bridge]\nname = \"shop-1\"\nhealth-every = \"200 ms\"\n\n[[mqtt]]\nname = \"office\"\n"
                      + "url = \"%s\"\nstations = [\"bench-2\"]\n")
                  .formatted(broker.url()));
      try (DaemonProcess second = DaemonProcess.start(two.program(), config).awaitUp("office")) {
        String not = "Neighbours: not alone link=";
        await().atMost(LONG).until(() -> first.log().contains(not + "\"broker\""));
        await().atMost(LONG).until(() -> second.log().contains(not + "\"office\""));
        await()
            .atMost(LONG)
            .untilAsserted(
                () -> {
                  JsonNode health =
                      Json.of(
                          broker
                              .take("witnessmark/v1/shop-1/health", 1, Duration.ofSeconds(5))
                              .get(0));
                  assertThat(health.path("state").asText()).isEqualTo("degraded");
                  assertThat(health.path("reason").asText())
                      .contains("another bridge of the name \"shop-1\" tells its health here, too");
                });
        assertThat(second.stop()).isEqualTo(DaemonProcess.TERMINATED);
      }
      awaitHealth("shop-1", "ok", "");
      assertThat(first.log()).contains("Neighbours: neighbour gone link=\"broker\"");
    }
  }

  @Test
  void aStationTakenOutOfTheConfigurationIsHeardNoMore() {
    try (DaemonProcess all = start(one, "shop-1", "")) {
      assertThat(all.stop()).isEqualTo(DaemonProcess.TERMINATED);
    }
    String event = "{\"wrench\":\"TW-0417\",\"event\":1,\"torque\":\"33\",\"unit\":\"N.m\"}";
    broker.publish("witnessmark/v1/bench-2/torque", List.of(event));
    try (DaemonProcess few = start(one, "shop-1", "stations = [\"bench-1\"]")) {
      // what the broker kept meanwhile is on record all the same
      await().atMost(LONG).until(() -> one.ledger().number("SELECT max(n) FROM entry;") == 5);
      assertThat(one.entry(5).path("reason").asText())
          .isEqualTo(
              "the station is not among the stations of this link; add it, or give the link a new"
                  + " client-id");
      broker.publish("witnessmark/v1/bench-2/torque", List.of(event));
      broker.publish("witnessmark/v1/bench-1/torque", List.of(event));
      await().atMost(LONG).until(() -> one.ledger().number("SELECT max(n) FROM entry;") == 6);
      assertThat(one.entry(6).path("station").asText()).isEqualTo("bench-1");
      assertThat(few.stop()).isEqualTo(DaemonProcess.TERMINATED);
    }
  }
}
