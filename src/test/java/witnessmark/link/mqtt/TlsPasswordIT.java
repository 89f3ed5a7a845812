package witnessmark.link.mqtt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.bench.Certificates;
import witnessmark.bench.Mosquitto;
import witnessmark.config.ConfigFile;
import witnessmark.link.LinkState;
import witnessmark.link.Tray;

/** A configuration file with a private authority, a client certificate, and a password. */
class TlsPasswordIT {
  @TempDir Path directory;
  private Certificates shop;
  private Mosquitto broker;
  private MqttLink link;

  @BeforeEach
  void start() throws Exception {
    shop = Certificates.authority(directory.resolve("shop"));
    shop.sign("broker", "IP:127.0.0.1");
    shop.sign("own", "DNS:shop-1");
    Path passwords = directory.resolve("passwords");
    assertThat(
            new ProcessBuilder("mosquitto_passwd", "-c", "-b", "" + passwords, "bridge", "right")
                .start()
                .waitFor())
        .isZero();
    broker =
        Mosquitto.start(
            directory,
            "allow_anonymous false",
            "password_file " + passwords,
            "require_certificate true",
            "cafile " + shop.ca(),
            "certfile " + shop.certificate("broker"),
            "keyfile " + shop.key("broker"));
  }

  @AfterEach
  void stop() {
    if (link != null) {
      link.close();
    }
    broker.close();
  }

  private void connect(String url, String password) throws IOException {
    Files.writeString(directory.resolve("password.txt"), "right\n");
    Path file = directory.resolve("shop.toml");
    Files.writeString(
        file,
        "[bridge]\nname = \"shop-1\"\n[[mqtt]]\nname = \"shop\"\nuser = \"bridge\"\nurl = \""
            + url
            + "\"\nca-file = \""
            + shop.ca()
            + "\"\ncert-file = \""
            + shop.certificate("own")
            + "\"\nkey-file = \""
            + shop.key("own")
            + "\"\n"
            + password
            + "\n");
    MqttSettings settings =
        ConfigFile.read(file, Map.of("BROKER_PASSWORD", "right", "OTHER", "wr0ng"))
            .brokers()
            .get(0)
            .settings();
    link = new MqttLink(settings, new Tray(1), Instant::now);
    link.start();
  }

  private String url() {
    return "ssl://127.0.0.1:" + broker.port();
  }

  @Test
  void theyOpenTheDoorByFileAndByEnvironment() throws IOException {
    for (String by :
        new String[] {"password-file = \"password.txt\"", "password-env = \"BROKER_PASSWORD\""}) {
      connect(url(), by);
      await().atMost(Duration.ofSeconds(15)).until(() -> link.status().state() == LinkState.UP);
      assertThat(link.publish("a/b", new byte[] {1}, false)).as(by).isTrue();
      link.close();
    }
  }

  @Test
  void aWrongPasswordIsRefusedAlsoBehindAGoodCertificate() throws IOException {
    connect(url(), "password-env = \"OTHER\"");
    await()
        .atMost(Duration.ofSeconds(15))
        .untilAsserted(
            () ->
                assertThat(link.status().detail())
                    .isEqualTo(
                        url() + ": the broker refused user \"bridge\"; check user and password"));
  }

  /** Somebody in between who speaks plain MQTT hears a TLS greeting and nothing else. */
  @Test
  void nothingIsEverSaidInPlain() throws Exception {
    try (ServerSocket between = new ServerSocket(0)) {
      connect("ssl://127.0.0.1:" + between.getLocalPort(), "password-file = \"password.txt\"");
      for (int attempt = 0; attempt < 2; attempt++) {
        try (Socket heard = between.accept()) {
          heard.setSoTimeout(5000);
          byte[] first = heard.getInputStream().readNBytes(200);
          // a TLS record of the kind handshake; an MQTT CONNECT begins with 0x10
          assertThat(first[0]).isEqualTo((byte) 0x16);
          assertThat(new String(first)).doesNotContain("MQTT").doesNotContain("right");
        }
      }
      assertThat(link.connected()).isFalse();
    }
  }
}
