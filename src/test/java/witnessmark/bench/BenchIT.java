package witnessmark.bench;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.io.DataInputStream;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BenchIT {
  @TempDir Path directory;

  @Test
  void brokerPassesOnWhatIsPublished() {
    try (Mosquitto broker = Mosquitto.start(directory)) {
      CompletableFuture<List<String>> taken =
          CompletableFuture.supplyAsync(() -> broker.take("a/b", 2, Duration.ofSeconds(20)));
      await().until(() -> broker.log().contains("SUBSCRIBE"));
      broker.publish("a/b", List.of("one", "two"));
      assertThat(taken.join()).containsExactly("one", "two");
    }
  }

  @Test
  void cablePassesBytesAgainAfterItWasPulledAndPlugged() throws IOException {
    try (PtyPair cable = PtyPair.plug(directory)) {
      cable.pull();
      assertThat(cable.bridge()).doesNotExist();
      cable.plug();
      cable.write("123".getBytes(US_ASCII));
      try (DataInputStream end = new DataInputStream(new FileInputStream(cable.bridge().toFile()));
          FileOutputStream start = new FileOutputStream(cable.bridge().toFile())) {
        byte[] bytes = new byte[3];
        end.readFully(bytes);
        assertThat(bytes).asString(US_ASCII).isEqualTo("123");
        start.write("abcd".getBytes(US_ASCII));
        assertThat(cable.read(4, Duration.ofSeconds(20))).asString(US_ASCII).isEqualTo("abcd");
      }
    }
  }
}
