package witnessmark.link.mqtt;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.bench.FreePort;
import witnessmark.bench.Mosquitto;
import witnessmark.link.Delivery;
import witnessmark.link.Inbox;
import witnessmark.link.LinkState;
import witnessmark.link.Tray;

class MqttLinkIT {
  private static final String TOPIC = "witnessmark/v1/bench-1/torque";
  private static final String HEALTH = "witnessmark/v1/shop-1/health";
  private static final Duration LONG = Duration.ofSeconds(20);

  @TempDir Path directory;
  private Mosquitto broker;
  private MqttLink link;

  @BeforeEach
  void startBroker() {
    broker = Mosquitto.start(directory);
  }

  @AfterEach
  void stop() {
    if (link != null) {
      link.close();
    }
    broker.close();
  }

  @Test
  void aMessageArrivesWithItsTopicAndItsBytes() {
    Tray tray = new Tray(100);
    up(tray);
    broker.publish(TOPIC, List.of("{\"wrench\":\"TW-0417\"}"));
    await().until(() -> tray.size() == 1);
    Delivery delivery = tray.take().get(0);
    assertThat(delivery.link()).isEqualTo("shop");
    assertThat(delivery.channel()).isEqualTo(TOPIC);
    assertThat(Tray.text(delivery)).isEqualTo("{\"wrench\":\"TW-0417\"}");
    assertThat(delivery.redelivered()).isFalse();
    assertThat(link.status().detail()).isEqualTo("connected to " + broker.url());
  }

  @Test
  void messagesPublishedWhileTheLinkIsClosedArriveWhenItIsBack() {
    up(new Tray(100));
    link.close();
    assertThat(link.status().state()).isEqualTo(LinkState.CLOSED);
    broker.publish(TOPIC, numbers(500));
    Tray tray = new Tray(1000);
    up(tray);
    await().until(() -> tray.acknowledgeAll().size() == 500);
    assertThat(tray.acknowledgeAll()).isEqualTo(numbers(500));
  }

  @Test
  void whatWasNotAcknowledgedIsDeliveredAgainAndWhatWasIsNot() {
    Tray first = new Tray(100);
    up(first);
    broker.publish(TOPIC, numbers(10));
    await().until(() -> first.size() == 10);
    List<Delivery> taken = first.take();
    taken.subList(0, 4).forEach(delivery -> delivery.acknowledge().run());
    link.close();
    taken.get(4).acknowledge().run();
    Tray second = new Tray(100);
    up(second);
    await().until(() -> second.size() == 6);
    List<Delivery> again = second.take();
    assertThat(again).extracting(Tray::text).isEqualTo(numbers(10).subList(4, 10));
    assertThat(again).allMatch(Delivery::redelivered);
  }

  @Test
  void anAcknowledgementGivenEarlyWaitsForTheOnesBeforeIt() {
    Tray first = new Tray(100);
    up(first);
    broker.publish(TOPIC, numbers(5));
    await().until(() -> first.size() == 5);
    List<Delivery> taken = first.take();
    taken.get(4).acknowledge().run();
    taken.get(2).acknowledge().run();
    taken.get(0).acknowledge().run();
    link.close();
    Tray second = new Tray(100);
    up(second);
    await().until(() -> second.size() == 4);
    assertThat(second.take()).extracting(Tray::text).isEqualTo(numbers(5).subList(1, 5));
  }

  @Test
  void theFirstConnectionIsTriedUntilThereIsABroker() {
    broker.kill();
    Tray tray = new Tray(100);
    link = new MqttLink(settings(), tray, Instant::now);
    link.start();
    await().until(() -> link.status().state() == LinkState.WAITING);
    await()
        .untilAsserted(
            () ->
                assertThat(link.status().detail())
                    .isEqualTo(
                        broker.url()
                            + ": nothing answers there; check that the broker runs, and the url"));
    broker.restart();
    await().atMost(LONG).until(() -> link.status().state() == LinkState.UP);
  }

  @Test
  void comesBackToABrokerThatWasKilledAndLosesNothingItHadTaken() {
    Tray tray = new Tray(1000);
    up(tray);
    link.hold();
    await().until(() -> !link.connected());
    broker.publish(TOPIC, numbers(200));
    // The store is written a moment after the change.
    await().until(() -> broker.log().contains("Saving in-memory database"));
    broker.kill();
    link.resume();
    broker.restart();
    await().atMost(LONG).until(() -> link.status().state() == LinkState.UP);
    await().until(() -> tray.acknowledgeAll().size() >= 200);
    assertThat(new LinkedHashSet<>(tray.acknowledgeAll())).containsExactlyElementsOf(numbers(200));
  }

  @Test
  void isNotDeafAfterTheBrokerLostItsStore() {
    Tray tray = new Tray(100);
    up(tray);
    broker.kill();
    await().until(() -> link.status().state() != LinkState.UP);
    broker.loseStore();
    broker.restart();
    await().atMost(LONG).until(() -> link.status().state() == LinkState.UP);
    broker.publish(TOPIC, List.of("heard"));
    await().until(() -> tray.acknowledgeAll().equals(List.of("heard")));
  }

  @Test
  void leavesWhenTheInboxIsFullAndComesBackWithNothingLostOrOutOfOrder() {
    Tray tray = new Tray(10);
    up(tray);
    broker.publish(TOPIC, numbers(300));
    await().until(() -> tray.refused() > 0);
    await()
        .atMost(LONG)
        .untilAsserted(
            () ->
                assertThat(link.status().detail())
                    .isEqualTo(
                        "away until the bridge has caught up; the broker keeps the messages"));
    await()
        .atMost(Duration.ofSeconds(60))
        .pollInterval(Duration.ofMillis(20))
        .until(() -> new LinkedHashSet<>(tray.acknowledgeAll()).size() == 300);
    // Repeats may stand between; each number comes first after the one before it.
    assertThat(new LinkedHashSet<>(tray.acknowledgeAll())).containsExactlyElementsOf(numbers(300));
  }

  @Test
  void staysAwayWhileHeldAndTakesUpWhereItWas() {
    Tray tray = new Tray(100);
    up(tray);
    link.hold();
    await()
        .untilAsserted(
            () ->
                assertThat(link.status().detail())
                    .isEqualTo(
                        "away until the bridge can record again; the broker keeps the messages"));
    assertThat(link.status().state()).isEqualTo(LinkState.WAITING);
    assertThat(link.publish("a/b", new byte[] {1}, false)).isFalse();
    broker.publish(TOPIC, numbers(3));
    assertThat(tray.size()).isZero();
    link.resume();
    await().until(() -> tray.acknowledgeAll().equals(numbers(3)));
  }

  @Test
  void publishesRetainedAndKnowsThatTheBrokerHasIt() {
    up(new Tray(100));
    assertThat(link.publish(HEALTH, "ok".getBytes(UTF_8), true)).isTrue();
    assertThat(broker.take(HEALTH, 1, LONG)).containsExactly("ok");
  }

  @Test
  void aFrozenBrokerMakesAPublishFalseWithinItsBound() {
    up(new Tray(100));
    broker.freeze();
    try {
      Instant begun = Instant.now();
      assertThat(link.publish("a/b", new byte[] {1}, false)).isFalse();
      assertThat(Duration.between(begun, Instant.now())).isLessThan(Duration.ofSeconds(8));
      begun = Instant.now();
      link.close();
      assertThat(Duration.between(begun, Instant.now())).isLessThan(Duration.ofSeconds(9));
    } finally {
      broker.thaw();
    }
  }

  @Test
  void aBrokerThatDoesNotAnswerTheConnectionIsNamed() {
    broker.freeze();
    try {
      link = new MqttLink(settings(), new Tray(1), Instant::now);
      link.start();
      await()
          .atMost(Duration.ofSeconds(30))
          .untilAsserted(
              () ->
                  assertThat(link.status().detail())
                      .isEqualTo(
                          broker.url()
                              + ": the broker took the connection but does not answer; restart it,"
                              + " or check the port"));
    } finally {
      broker.thaw();
    }
    await().atMost(LONG).until(() -> link.status().state() == LinkState.UP);
  }

  @Test
  void theLastWillIsPublishedWhenTheLinkIsCutOffAndNotWhenItSaysGoodbye() throws Exception {
    up(new Tray(100));
    link.publish(HEALTH, "ok".getBytes(UTF_8), true);
    link.close();
    assertThat(broker.take(HEALTH, 1, LONG)).containsExactly("ok");
    int port = FreePort.next();
    Process wire =
        new ProcessBuilder(
                "socat", "TCP-LISTEN:" + port + ",bind=127.0.0.1", "TCP:127.0.0.1:" + broker.port())
            .inheritIO()
            .start();
    link = new MqttLink(settings("tcp://127.0.0.1:" + port), new Tray(100), Instant::now);
    link.start();
    await().atMost(LONG).until(link::connected);
    wire.destroyForcibly().waitFor();
    await().until(() -> broker.take(HEALTH, 1, LONG).equals(List.of("gone")));
  }

  @Test
  void twoProgramsOfOneClientIdAreToldWhatToLookFor() {
    up(new Tray(100));
    try (MqttLink second = new MqttLink(settings(), new Tray(100), Instant::now)) {
      second.start();
      await()
          .untilAsserted(
              () ->
                  assertThat(link.status().detail())
                      .isEqualTo(
                          broker.url()
                              + ": the connection was lost; if this repeats, look for another"
                              + " program that uses the client-id \"witnessmark-shop-1\""));
    }
  }

  @Test
  void refusesToListenWhereTheBrokerGrantsLessThanQosOne() throws IOException {
    grudged(
        0,
        "the broker grants \""
            + TOPIC
            + "\" only QoS 0, under which messages get lost;"
            + " raise its limit to QoS 1");
    grudged(
        0x80,
        "the broker refused the subscription to \""
            + TOPIC
            + "\"; check what its access list allows this user");
  }

  private static void grudged(int grant, String detail) throws IOException {
    try (GrudgingBroker grudging = new GrudgingBroker(grant);
        MqttLink listener = new MqttLink(settings(grudging.url()), new Tray(1), Instant::now)) {
      listener.start();
      await()
          .untilAsserted(
              () ->
                  assertThat(listener.status().detail()).isEqualTo(grudging.url() + ": " + detail));
      assertThat(listener.connected()).isFalse();
    }
  }

  @Test
  void aBridgeThatFailsToTakeAMessageGetsItAgain() {
    Tray tray = new Tray(100);
    int[] failures = {1};
    link =
        new MqttLink(
            settings(),
            new Inbox() {
              @Override
              public boolean offer(Delivery delivery) {
                if (failures[0]-- > 0) {
                  throw new IllegalStateException("broken on purpose");
                }
                return tray.offer(delivery);
              }

              @Override
              public boolean hasRoom() {
                return true;
              }
            },
            Instant::now);
    link.start();
    await().until(() -> link.status().state() == LinkState.UP);
    broker.publish(TOPIC, List.of("one"));
    await().atMost(LONG).until(() -> tray.acknowledgeAll().equals(List.of("one")));
  }

  private void up(Tray tray) {
    link = new MqttLink(settings(), tray, Instant::now);
    link.start();
    await().atMost(LONG).until(() -> link.status().state() == LinkState.UP);
    assertThat(link.connected()).isTrue();
  }

  private MqttSettings settings() {
    return settings(broker.url());
  }

  private static MqttSettings settings(String url) {
    return new MqttSettings(
        "shop",
        url,
        "witnessmark-shop-1",
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        List.of(TOPIC),
        List.of(),
        List.of(),
        HEALTH,
        "gone".getBytes(UTF_8));
  }

  private static List<String> numbers(int count) {
    return IntStream.range(0, count).mapToObj(Integer::toString).toList();
  }
}
