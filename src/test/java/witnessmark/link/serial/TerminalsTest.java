package witnessmark.link.serial;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TerminalsTest {
  private static final List<String> DRIVERS =
      List.of(
          "/dev/tty             /dev/tty        5       0 system:/dev/tty",
          "usbserial            /dev/ttyUSB   188 0-511 serial",
          "serial               /dev/ttyS       4 64-95 serial",
          "pty_slave            /dev/pts      136 0-1048575 pty:slave",
          "unknown              /dev/tty        4 1-63 console",
          "odd                  /dev/odd      200 many");

  @ParameterizedTest
  @CsvSource({
    "188,0,true",
    "188,511,true",
    "188,512,false",
    "4,64,true",
    "4,63,false",
    "136,300000,true",
    "5,0,false",
    "1,3,false",
    "200,7,true"
  })
  void theKernelsListTellsWhatIsALine(long major, long minor, boolean line) {
    long device = (minor & 0xff) | (major & 0xfff) << 8 | (minor & ~0xffL) << 12;
    assertThat(Terminals.among(DRIVERS, device)).isEqualTo(line);
  }

  @ParameterizedTest
  @ValueSource(strings = {"/etc/passwd", "/dev", "/dev/null", "/dev/zero", "/dev/tty"})
  void whatIsThereAndNoLineIsRuledOut(String path) {
    assertThat(Terminals.ruleOut(Path.of(path))).isTrue();
  }

  @Test
  void whatIsNotThereIsLeftToTheOpening() {
    assertThat(Terminals.ruleOut(Path.of("/dev/ttyWM99"))).isFalse();
  }
}
