package witnessmark.config;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.link.mqtt.MqttSettings;
import witnessmark.link.serial.Parity;
import witnessmark.link.serial.SerialSettings;

class ConfigFileTest {
  @TempDir private Path temp;
  private ConfigDirectory directory;

  @BeforeEach
  void everythingThatIsNamedExists() throws IOException {
    directory = new ConfigDirectory(temp);
  }

  @Test
  void whatIsNotSaidHasItsDefault() throws IOException {
    BridgeConfig config =
        directory.read(
            "[bridge]\nname = \"shop-1\"\n[[mqtt]]\nname = \"shop\"\n"
                + "url = \"tcp://127.0.0.1:1883\"\n[[serial]]\nname = \"cable\"\n"
                + "port = \"/dev/ttyUSB0\"\nstation = \"bench-1\"\n"
                + "profile = \"profiles/demo-line.toml\"\n");
    assertThat(config.data()).isEmpty();
    assertThat(config.queue()).isEqualTo(1000);
    assertThat(config.keepFree()).isEqualTo(200_000_000);
    assertThat(config.healthEvery()).isEqualTo(Duration.ofSeconds(10));
    MqttConfig broker = config.brokers().get(0);
    assertThat(broker.publish()).isTrue();
    assertThat(broker.mapped()).isEmpty();
    MqttSettings settings = broker.settings();
    assertThat(settings.clientId()).isEqualTo("witnessmark-shop-1-shop");
    assertThat(settings.user()).isEmpty();
    assertThat(settings.password()).isEmpty();
    assertThat(settings.subscriptions())
        .containsExactly("witnessmark/v1/+/torque", "witnessmark/v1/+/scan");
    assertThat(settings.watched()).containsExactly("witnessmark/v1/+/health");
    assertThat(settings.ended()).isEmpty();
    assertThat(broker.serves("bench-7")).isTrue();
    assertThat(settings.willTopic()).isEqualTo("witnessmark/v1/shop-1/health");
    assertThat(new String(settings.will(), StandardCharsets.UTF_8))
        .isEqualTo("{\"bridge\":\"shop-1\",\"state\":\"gone\"}");
    SerialSettings line = config.ports().get(0).settings();
    assertThat(line.baud()).isEqualTo(9600);
    assertThat(line.dataBits()).isEqualTo(8);
    assertThat(line.stopBits()).isEqualTo(1);
    assertThat(line.parity()).isEqualTo(Parity.NONE);
    assertThat(line.poll()).isEmpty();
  }

  @Test
  void whatIsSaidIsTaken() throws IOException {
    BridgeConfig config =
        directory.read(
            "[bridge]\nname = \"shop-1\"\ndata = \"log\"\nqueue = 16\nhealth-every = \"250 ms\"\n"
                + "keep-free = \"2 GB\"\n"
                + "[[mqtt]]\nname = \"office\"\nurl = \"ssl://broker.example:8883\"\n"
                + "client-id = \"own\"\nuser = \"u\"\npassword-env = \"BROKER_PASSWORD\"\n"
                + "ca-file = \"tls/ca.pem\"\ncert-file = \"tls/shop-1.pem\"\n"
                + "key-file = \"tls/shop-1.key\"\nsubscribe = false\npublish = false\n"
                + "[[mqtt.map]]\ntopic = \"plant/a\"\nstation = \"bench-2\"\n"
                + "profile = \"profiles/nested-json.toml\"\n"
                + "[[serial]]\nname = \"cable\"\nport = \"usb:0403:6001\"\nstation = \"bench-1\"\n"
                + "profile = \"profiles/comma-line.toml\"\nbaud = 4000000\ndata-bits = 7\n"
                + "stop-bits = 2\nparity = \"even\"\n");
    assertThat(config.data()).contains("log");
    assertThat(config.queue()).isEqualTo(16);
    assertThat(config.keepFree()).isEqualTo(2_000_000_000);
    assertThat(config.healthEvery()).isEqualTo(Duration.ofMillis(250));
    MqttConfig broker = config.brokers().get(0);
    assertThat(broker.publish()).isFalse();
    assertThat(broker.mapped()).extracting(MqttConfig.Mapped::topic).containsExactly("plant/a");
    assertThat(broker.mapped().get(0).profile().name()).isEqualTo("nested-json");
    MqttSettings settings = broker.settings();
    assertThat(settings.subscriptions()).containsExactly("plant/a");
    assertThat(settings.clientId()).isEqualTo("own");
    assertThat(settings.password()).contains("from-env");
    assertThat(settings.caFile()).contains(directory.path("tls/ca.pem"));
    assertThat(settings.certFile()).contains(directory.path("tls/shop-1.pem"));
    assertThat(settings.keyFile()).contains(directory.path("tls/shop-1.key"));
    SerialConfig port = config.ports().get(0);
    assertThat(port.station()).isEqualTo("bench-1");
    assertThat(port.settings().port().text()).isEqualTo("usb:0403:6001");
    assertThat(port.settings().baud()).isEqualTo(4_000_000);
    assertThat(port.settings().dataBits()).isEqualTo(7);
    assertThat(port.settings().stopBits()).isEqualTo(2);
    assertThat(port.settings().parity()).isEqualTo(Parity.EVEN);
    assertThat(port.settings().poll()).contains("READ\r\n".getBytes(StandardCharsets.US_ASCII));
    assertThat(port.settings().pollEvery()).isEqualTo(Duration.ofMillis(500));
  }

  @Test
  void aLinkOfSomeStationsReadsTheirsAloneAndEndsWhatItMayHaveReadBefore() throws IOException {
    MqttConfig broker =
        directory
            .read(
                "[bridge]\nname = \"shop-1\"\n[[mqtt]]\nname = \"shop\"\n"
                    + "url = \"tcp://127.0.0.1:1883\"\nstations = [\"bench-1\", \"lift\"]\n")
            .brokers()
            .get(0);
    assertThat(broker.serves("lift")).isTrue();
    assertThat(broker.serves("bench-2")).isFalse();
    assertThat(broker.settings().subscriptions())
        .containsExactly(
            "witnessmark/v1/bench-1/torque",
            "witnessmark/v1/bench-1/scan",
            "witnessmark/v1/lift/torque",
            "witnessmark/v1/lift/scan");
    assertThat(broker.settings().watched())
        .as("for another bridge of the same name")
        .containsExactly("witnessmark/v1/shop-1/health");
    assertThat(broker.settings().ended())
        .containsExactly(
            "witnessmark/v1/+/torque", "witnessmark/v1/+/scan", "witnessmark/v1/+/health");
  }

  @Test
  void aPasswordFileIsReadWithoutItsLineEnd() throws IOException {
    BridgeConfig config =
        directory.read(
            "[bridge]\nname = \"shop-1\"\n[[mqtt]]\nname = \"shop\"\n"
                + "url = \"tcp://127.0.0.1:1883\"\nuser = \"u\"\n"
                + "password-file = \"broker-password.txt\"\n");
    assertThat(config.brokers().get(0).settings().password()).contains("from-file");
    assertThat(config.toString()).doesNotContain("from-file");
  }

  @Test
  void aFileThatDoesNotExistIsNoConfiguration() {
    assertThatThrownBy(() -> ConfigFile.read(directory.path("other.toml"), Map.of()))
        .isInstanceOf(NoSuchFileException.class)
        .hasMessage(directory.path("other.toml").toString());
    assertThat(Files.exists(directory.file())).isFalse();
  }
}
