package wrenchsim;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Set;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.LinkedBlockingQueue;
import org.awaitility.Awaitility;
import org.eclipse.paho.client.mqttv3.MqttClient;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The closed loop and the burst over a real broker; the test is the bridge. */
class ShopIT {
  private static final String TOPIC = "witnessmark/v1/bench-1/";
  private static final String[] FOUR = {"hub/1", "hub/2", "hub/3", "hub/4"};

  @TempDir private Path directory;
  private Mosquitto broker;

  @BeforeEach
  void startBroker() throws IOException {
    broker = new Mosquitto(directory);
  }

  @AfterEach
  void stopBroker() {
    broker.close();
  }

  /**
   * The paper bridge on the broker: one thread, so that verdicts and expectations keep their order.
   */
  private final class Played implements AutoCloseable {
    private final MqttClient client =
        new MqttClient(broker.uri(), "played-bridge", new MemoryPersistence());
    private final BlockingQueue<byte[]> heard = new LinkedBlockingQueue<>();
    private final PaperBridge paper;
    private final Thread thread = new Thread(this::play, "played-bridge");

    Played(PaperBridge paper) throws MqttException {
      this.paper = paper;
      client.connect();
      client.subscribe(TOPIC + "torque", 1, (topic, message) -> heard.add(message.getPayload()));
      thread.setDaemon(true);
    }

    void begin() throws MqttException {
      client.publish(TOPIC + "expect", paper.expect(true), 1, true);
      thread.start();
    }

    private void play() {
      try {
        while (true) {
          take(heard.take());
        }
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      } catch (IOException | MqttException e) {
        throw new IllegalStateException(e);
      }
    }

    /** The word for the serial line's answer. */
    synchronized String take(byte[] message) throws IOException, MqttException {
      List<byte[]> verdicts = paper.takeAll(message);
      if (verdicts.isEmpty()) {
        return "repeat";
      }
      for (byte[] verdict : verdicts) {
        client.publish(TOPIC + "verdict", verdict, 1, false);
      }
      client.publish(TOPIC + "expect", paper.expect(false), 1, true);
      if (paper.isNonconforming()) {
        client.publish(TOPIC + "expect", paper.expect(true), 1, true);
      }
      return "in-band";
    }

    @Override
    public void close() throws MqttException {
      thread.interrupt();
      client.disconnect();
      client.close();
    }
  }

  private Simulator shop(Path truth, String... more) throws IOException {
    List<String> args =
        new java.util.ArrayList<>(
            List.of(
                "shop",
                "--broker",
                broker.uri(),
                "--station",
                "bench-1",
                "--seed",
                "7",
                "--truth",
                truth.toString(),
                "--clock-start",
                "2026-11-25T10:00:00Z"));
    args.addAll(List.of(more));
    return new Simulator(directory, args.toArray(String[]::new));
  }

  @Test
  void aJobWithMistakesIsDoneAndTwoRunsTellTheSameTruth() throws Exception {
    String[] more = {
      "--wrench", "TW-0417,max=100",
      "--mistake", "hub/1=under",
      "--mistake", "hub/2=over",
      "--mistake", "hub/3=redeliver",
      "--mistake", "hub/4=double"
    };
    byte[][] truths = new byte[2][];
    for (int run = 0; run < 2; run++) {
      Path truth = directory.resolve("truth-" + run + ".jsonl");
      PaperBridge paper = new PaperBridge(FOUR);
      try (Played played = new Played(paper);
          Simulator simulator = shop(truth, more)) {
        played.begin();
        assertThat(simulator.status()).as(simulator.err()).isZero();
        // The second hit on the last fastener and the second copy may still be on their way.
        Awaitility.await().until(() -> paper.repeats() == 1 && paper.effects().size() == 8);
        assertThat(paper.effects())
            .containsExactly(
                "again",
                "credited",
                "nonconforming",
                "loosened",
                "credited",
                "credited",
                "credited",
                "rechecked");
        assertThat(simulator.out().lines().toList()).hasSize(9);
        assertThat(simulator.out().lines().findFirst().orElseThrow())
            .matches(
                "TW-0417 on hub/1: 2[0-9]\\.[0-9]{2} N\\.m, [0-9.]+ deg \\(under on purpose\\)");
      }
      truths[run] = Files.readAllBytes(truth);
    }
    assertThat(new String(truths[1], UTF_8)).isEqualTo(new String(truths[0], UTF_8));
    assertThat(new String(truths[0], UTF_8).lines().toList()).hasSize(9);
  }

  @Test
  void oneShopHasWrenchesOnTheAirAndOnALine() throws Exception {
    Path link = directory.resolve("tw-0502");
    Path truth = directory.resolve("truth.jsonl");
    PaperBridge paper = new PaperBridge(FOUR).only("hub/2", "TW-0502").only("hub/3", "TW-0502");
    try (Played played = new Played(paper);
        Simulator simulator =
            shop(
                truth,
                "--wrench",
                "TW-0417",
                "--wrench",
                "serial=TW-0502,max=60,via=virtual:" + link,
                "--mistake",
                "hub/3=redeliver",
                "--json");
        LineEnd line = new LineEnd(link)) {
      played.begin();
      int frames = 0;
      while (frames < 3) {
        LineEnd.Frame frame = line.next().orElseThrow();
        String word = played.take(frame.json());
        line.answer("A|" + frame.wrench() + "|" + frame.number() + "|" + word);
        frames++;
      }
      assertThat(simulator.status()).as(simulator.err()).isZero();
      assertThat(paper.isComplete()).isTrue();
      assertThat(paper.repeats()).isEqualTo(1);
      assertThat(simulator.out()).isEqualTo(Files.readString(truth));
      assertThat(
              simulator.out().lines().map(l -> l.replaceAll(".*\"wrench\":\"([^\"]*)\".*", "$1")))
          .containsExactly("TW-0417", "TW-0502", "TW-0502", "TW-0502", "TW-0417");
    }
  }

  @Test
  void aWrenchOutOfRangeDeliversAtOnceWhatWasDoneByMemoryAndLabelsAreScannedInRange()
      throws Exception {
    Path truth = directory.resolve("truth.jsonl");
    PaperBridge paper = new PaperBridge(FOUR).anyOrder();
    List<String> scans = java.util.Collections.synchronizedList(new java.util.ArrayList<>());
    try (Played played = new Played(paper);
        Simulator simulator =
            shop(
                truth,
                "--wrench",
                "TW-0417,store=3,away=1,twice=1,half=0",
                "--wrench",
                "TW-0502",
                "--scan")) {
      played.client.subscribe(
          TOPIC + "scan",
          1,
          (topic, message) -> scans.add(new String(message.getPayload(), UTF_8)));
      played.begin();
      assertThat(simulator.status()).as(simulator.err()).isZero();
      Awaitility.await().until(() -> paper.repeats() == 4);
      assertThat(paper.isComplete()).isTrue();
      assertThat(scans).as("no label is scanned out of range").isEmpty();
      List<String> lines = Files.readAllLines(truth);
      assertThat(lines.stream().filter(l -> l.contains("\"stored\":true"))).hasSize(4);
      assertThat(lines.stream().filter(l -> l.contains("\"act\":\"redeliver\""))).hasSize(4);
    }
    try (Played played = new Played(new PaperBridge(FOUR));
        Simulator simulator = shop(truth, "--wrench", "TW-0417", "--scan")) {
      played.client.subscribe(
          TOPIC + "scan",
          1,
          (topic, message) -> scans.add(new String(message.getPayload(), UTF_8)));
      played.begin();
      assertThat(simulator.status()).as(simulator.err()).isZero();
      Awaitility.await().until(() -> scans.size() == 4);
      assertThat(scans.get(0)).isEqualTo("{\"scan\":\"hub/1\"}");
    }
  }

  @Test
  void aStationThatWaitsForAPersonEndsTheShiftAfterTheIdleTimeout() throws Exception {
    try (MqttClient client = new MqttClient(broker.uri(), "person", new MemoryPersistence())) {
      client.connect();
      client.publish(
          TOPIC + "expect",
          "{\"state\":\"attest\",\"done\":2,\"total\":4,\"expect\":[]}".getBytes(UTF_8),
          1,
          true);
      try (Simulator simulator =
          shop(directory.resolve("t"), "--wrench", "TW-0417", "--idle-timeout", "1")) {
        assertThat(simulator.status()).isEqualTo(1);
        assertThat(simulator.err())
            .isEqualToIgnoringNewLines(
                "wrenchsim: nothing was heard for 1 s, and the station's state is 'attest' with 2 done: a person's command may be due there");
      }
      client.disconnect();
    }
  }

  @Test
  void aBurstOutlivesItsBrokerAndNoEventIsMissing() throws Exception {
    int count = 4000;
    MqttConnectOptions keeping = new MqttConnectOptions();
    keeping.setCleanSession(false);
    try (MqttClient reader = new MqttClient(broker.uri(), "reader", new MemoryPersistence())) {
      reader.connect(keeping);
      reader.subscribe(TOPIC + "torque", 1);
      reader.disconnect();
      try (Simulator simulator =
          new Simulator(
              directory,
              "burst",
              "--broker",
              broker.uri(),
              "--station",
              "bench-1",
              "--count",
              Integer.toString(count),
              "--rate",
              "1500",
              "--first-event",
              "10",
              "--truth",
              directory.resolve("burst.jsonl").toString())) {
        Path truth = directory.resolve("burst.jsonl");
        Awaitility.await()
            .atMost(Duration.ofSeconds(20))
            .until(() -> Files.exists(truth) && Files.size(truth) > 100_000);
        broker.stop();
        broker.start();
        assertThat(simulator.status()).as(simulator.err()).isZero();
        assertThat(simulator.out())
            .matches(
                "burst: the broker has events 10 to 4009 of TW-0417 \\(4000 in [0-9.]+ s, [0-9]+/s, 1 reconnections\\)\\R");
        assertThat(Files.readAllLines(truth)).hasSize(count);
      }
      Set<Integer> events = ConcurrentHashMap.newKeySet();
      reader.setCallback(new Collecting(events));
      reader.connect(keeping);
      Awaitility.await().atMost(Duration.ofSeconds(30)).until(() -> events.size() == count);
      assertThat(events).contains(10, 4009);
      reader.disconnect();
    }
  }

  private record Collecting(Set<Integer> events)
      implements org.eclipse.paho.client.mqttv3.MqttCallback {
    @Override
    public void connectionLost(Throwable cause) {}

    @Override
    public void messageArrived(String topic, org.eclipse.paho.client.mqttv3.MqttMessage message) {
      String json = new String(message.getPayload(), UTF_8);
      events.add(Integer.valueOf(json.replaceAll(".*\"event\":([0-9]+).*", "$1")));
    }

    @Override
    public void deliveryComplete(org.eclipse.paho.client.mqttv3.IMqttDeliveryToken token) {}
  }
}
