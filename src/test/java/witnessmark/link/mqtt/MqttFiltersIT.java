package witnessmark.link.mqtt;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.bench.Mosquitto;
import witnessmark.link.LinkState;
import witnessmark.link.Tray;

/** What a link hears beside its subscriptions, and what it hears no more. */
class MqttFiltersIT {
  private static final String ALL = "witnessmark/v1/+/torque";
  private static final String ONE = "witnessmark/v1/bench-1/torque";
  private static final String OTHER = "witnessmark/v1/bench-2/torque";
  private static final String WATCHED = "witnessmark/v1/+/health";
  private static final String NEIGHBOUR = "witnessmark/v1/shop-2/health";
  private static final Duration LONG = Duration.ofSeconds(20);

  @TempDir Path directory;
  private Mosquitto broker;

  @BeforeEach
  void start() {
    broker = Mosquitto.start(directory);
  }

  @AfterEach
  void stop() {
    broker.close();
  }

  @Test
  void whatIsOnlyWatchedIsHeardAndNeverQueuesUpWhileTheLinkIsAway() {
    Tray tray = new Tray(100);
    try (MqttLink link = up(tray, broker.url(), List.of(ALL), List.of(WATCHED), List.of())) {
      broker.publish(NEIGHBOUR, List.of("heard"));
      await().atMost(LONG).until(() -> tray.acknowledgeAll().equals(List.of("heard")));
      assertThat(link.connected()).isTrue();
    }
    broker.publish(NEIGHBOUR, List.of("lost", "lost", "lost"));
    broker.publish(ONE, List.of("kept"));
    try (MqttLink link = up(tray, broker.url(), List.of(ALL), List.of(WATCHED), List.of())) {
      broker.publish(ONE, List.of("last"));
      await().atMost(LONG).until(() -> tray.acknowledgeAll().contains("last"));
      assertThat(tray.acknowledgeAll()).containsExactly("heard", "kept", "last");
      assertThat(link.connected()).isTrue();
    }
  }

  @Test
  void whatABrokerRefusesToLetWatchKeepsNoLinkDown() throws Exception {
    try (GrudgingBroker grudging = new GrudgingBroker(1, 0x80);
        MqttLink link =
            up(new Tray(1), grudging.url(), List.of(ALL), List.of(WATCHED), List.of())) {
      await()
          .during(Duration.ofSeconds(1))
          .until(() -> link.status().state() == LinkState.UP && link.connected());
    }
  }

  @Test
  void whatAnEarlierConfigurationSubscribedIsEnded() {
    Tray tray = new Tray(100);
    up(tray, broker.url(), List.of(ALL), List.of(), List.of()).close();
    try (MqttLink link = up(tray, broker.url(), List.of(ONE), List.of(), List.of(ALL))) {
      broker.publish(OTHER, List.of("other"));
      broker.publish(ONE, List.of("one"));
      await().atMost(LONG).until(() -> tray.acknowledgeAll().contains("one"));
      assertThat(tray.acknowledgeAll()).containsExactly("one");
      assertThat(link.connected()).isTrue();
    }
    up(tray, broker.url(), List.of(), List.of(), List.of(ONE)).close();
    broker.publish(ONE, List.of("nobody's"));
    try (MqttLink link = up(tray, broker.url(), List.of(OTHER), List.of(), List.of())) {
      broker.publish(OTHER, List.of("last"));
      await().atMost(LONG).until(() -> tray.acknowledgeAll().contains("last"));
      assertThat(tray.acknowledgeAll()).containsExactly("one", "last");
      assertThat(link.connected()).isTrue();
    }
  }

  private static MqttLink up(
      Tray tray, String url, List<String> subscribed, List<String> watched, List<String> ended) {
    MqttLink link =
        new MqttLink(
            new MqttSettings(
                "shop",
                url,
                "witnessmark-shop-1",
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                subscribed,
                watched,
                ended,
                "witnessmark/v1/shop-1/health",
                "gone".getBytes(UTF_8)),
            tray,
            Instant::now);
    link.start();
    await().atMost(LONG).until(() -> link.status().state() == LinkState.UP);
    return link;
  }
}
