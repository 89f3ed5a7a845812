package witnessmark.link.mqtt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.io.OutputStream;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.bench.Mosquitto;
import witnessmark.link.Delivery;
import witnessmark.link.LinkState;
import witnessmark.link.Tray;

/** A message of 200 MB by a real broker, which by itself allows 256. */
class GiantPayloadIT {
  private static final int SIZE = 200_000_000;

  @TempDir Path directory;

  @Test
  void aGiantIsReadPastTakesNoRoomAndWhatFollowsIsHeard() throws Exception {
    Path giant = directory.resolve("giant");
    try (OutputStream out = Files.newOutputStream(giant)) {
      byte[] part = "x".repeat(1_000_000).getBytes();
      for (int i = 0; i < SIZE / part.length; i++) {
        out.write(part);
      }
    }
    Tray tray = new Tray(10);
    try (Mosquitto broker = Mosquitto.start(directory)) {
      MqttLink link = new MqttLink(settings(broker.url()), tray, Instant::now);
      try {
        link.start();
        await().until(() -> link.status().state() == LinkState.UP);
        System.gc();
        ManagementFactory.getMemoryPoolMXBeans().forEach(MemoryPoolMXBean::resetPeakUsage);
        long before = peak();
        Process sent =
            new ProcessBuilder(
                    "mosquitto_pub",
                    "-p",
                    Integer.toString(broker.port()),
                    "-q",
                    "1",
                    "-t",
                    "witnessmark/v1/bench-1/torque",
                    "-f",
                    giant.toString())
                .start();
        await().atMost(Duration.ofSeconds(60)).until(() -> tray.size() == 1);
        assertThat(sent.waitFor()).isZero();
        assertThat(peak() - before).as("bytes of heap").isLessThan(SIZE / 2);
        Delivery delivery = tray.take().get(0);
        assertThat(delivery.cut().orElseThrow().length()).isEqualTo(SIZE);
        assertThat(delivery.bytes()).hasSize(4096).containsOnly('x');
        delivery.acknowledge().run();
        broker.publish("witnessmark/v1/bench-1/torque", List.of("next"));
        await().until(() -> tray.size() == 1);
        assertThat(tray.acknowledgeAll()).containsExactly("next");
      } finally {
        link.close();
      }
    }
  }

  private static long peak() {
    return ManagementFactory.getMemoryPoolMXBeans().stream()
        .filter(p -> p.getType() == java.lang.management.MemoryType.HEAP)
        .mapToLong(p -> p.getPeakUsage().getUsed())
        .sum();
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
        List.of("witnessmark/v1/+/torque"),
        List.of(),
        List.of(),
        "witnessmark/v1/shop-1/health",
        new byte[0]);
  }
}
