package witnessmark.config;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The configuration that the Debian package brings. */
class PackagedConfigTest {
  @Test
  void itIsInOrderAndListensToThisMachineOnly() throws Exception {
    BridgeConfig config = ConfigFile.read(Path.of("src/main/debian/shop.toml"), Map.of());
    assertThat(config.data()).contains("/var/lib/witnessmark");
    assertThat(config.brokers()).hasSize(1);
    assertThat(config.brokers().get(0).settings().url()).isEqualTo("tcp://127.0.0.1:1883");
    assertThat(config.ports()).isEmpty();
  }
}
