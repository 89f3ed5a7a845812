package witnessmark.link.mqtt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.nio.file.Path;
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

class MqttUserIT {
  @TempDir Path directory;
  private Mosquitto broker;
  private MqttLink link;

  @BeforeEach
  void startBroker() throws IOException, InterruptedException {
    Path passwords = directory.resolve("passwords");
    assertThat(
            new ProcessBuilder("mosquitto_passwd", "-c", "-b", "" + passwords, "bridge", "right")
                .start()
                .waitFor())
        .isZero();
    broker = Mosquitto.start(directory, "allow_anonymous false", "password_file " + passwords);
  }

  @AfterEach
  void stop() {
    link.close();
    broker.close();
  }

  @Test
  void theRightPasswordConnects() {
    connect(Optional.of("bridge"), Optional.of("right"));
    await().until(() -> link.status().state() == LinkState.UP);
  }

  @Test
  void aWrongPasswordIsRefusedAndNotRepeatedInTheStatus() {
    connect(Optional.of("bridge"), Optional.of("wr0ng"));
    awaitDetail("the broker refused user \"bridge\"; check user and password");
  }

  @Test
  void aLinkWithoutUserIsRefused() {
    connect(Optional.empty(), Optional.empty());
    awaitDetail("the broker refused a link without user and password; give it both");
  }

  private void awaitDetail(String text) {
    await()
        .untilAsserted(
            () -> assertThat(link.status().detail()).isEqualTo(broker.url() + ": " + text));
  }

  private void connect(Optional<String> user, Optional<String> password) {
    link =
        new MqttLink(
            new MqttSettings(
                "shop",
                broker.url(),
                "witnessmark-shop-1",
                user,
                password,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                List.of("witnessmark/v1/+/torque"),
                List.of(),
                List.of(),
                "witnessmark/v1/shop-1/health",
                new byte[0]),
            new Tray(1),
            Instant::now);
    link.start();
  }
}
