package witnessmark.link.serial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class SerialSettingsTest {
  @Test
  void refusesWhatNoPortCanBeSetTo() {
    assertThatThrownBy(() -> settings(49, 8, 1, 100))
        .hasMessage("baud must be 50 to 4000000, found 49");
    assertThatThrownBy(() -> settings(9600, 9, 1, 100))
        .hasMessage("data bits must be 7 to 8, found 9");
    assertThatThrownBy(() -> settings(9600, 8, 3, 100))
        .hasMessage("stop bits must be 1 to 2, found 3");
    assertThatThrownBy(() -> settings(9600, 8, 1, 9))
        .hasMessage("a poll must be every 10 ms to 3600 s");
  }

  @Test
  void keepsItsOwnCopyOfThePoll() {
    SerialSettings settings = settings(9600, 7, 2, 10);
    settings.poll().orElseThrow()[0] = 0;
    assertThat(settings.poll().orElseThrow()).containsExactly('R');
  }

  private static SerialSettings settings(int baud, int dataBits, int stopBits, int millis) {
    return new SerialSettings(
        "bench-1",
        PortName.parse("/dev/ttyUSB0"),
        baud,
        dataBits,
        stopBits,
        Parity.EVEN,
        Optional.of(new byte[] {'R'}),
        Duration.ofMillis(millis));
  }
}
