package witnessmark.link.serial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;

class PortNameTest {
  private static final FoundPort ONE = new FoundPort("/dev/ttyUSB0", "A600XYZ", 0x0403, 0x6001);
  private static final FoundPort TWIN = new FoundPort("/dev/ttyUSB1", "A600ABC", 0x0403, 0x6001);
  private static final FoundPort BOARD = new FoundPort("/dev/ttyS0", "", -1, -1);

  @Test
  void readsAPath() throws PortException {
    PortName name = PortName.parse("/dev/ttyUSB0");
    assertThat(name).isEqualTo(new PortName.ByPath("/dev/ttyUSB0"));
    assertThat(name.locate(List::of)).isEqualTo("/dev/ttyUSB0");
  }

  @Test
  void readsAUsbSerialNumberAndFindsItUnderWhateverPathItHasNow() throws PortException {
    PortName name = PortName.parse("usb-serial:A600XYZ");
    assertThat(name).isEqualTo(new PortName.ByUsbSerial("A600XYZ"));
    assertThat(name.locate(() -> List.of(BOARD, TWIN, ONE))).isEqualTo("/dev/ttyUSB0");
    FoundPort replugged = new FoundPort("/dev/ttyUSB7", "A600XYZ", 0x0403, 0x6001);
    assertThat(name.locate(() -> List.of(TWIN, replugged))).isEqualTo("/dev/ttyUSB7");
  }

  @Test
  void readsAUsbMake() throws PortException {
    PortName name = PortName.parse("usb:0403:6001");
    assertThat(name).isEqualTo(new PortName.ByUsbId(0x0403, 0x6001));
    assertThat(name.locate(() -> List.of(BOARD, ONE))).isEqualTo("/dev/ttyUSB0");
  }

  @Test
  void everyFormIsWrittenAsItIsRead() {
    for (String text : List.of("/dev/serial/by-id/x", "usb-serial:A600XYZ", "usb:04d8:00ff")) {
      assertThat(PortName.parse(text).text()).isEqualTo(text);
      assertThat(PortName.parse(PortName.parse(text).text())).isEqualTo(PortName.parse(text));
    }
    assertThat(PortName.parse("usb:04D8:00FF")).isEqualTo(PortName.parse("usb:04d8:00ff"));
  }

  @Test
  void refusesEverythingElse() {
    for (String text :
        List.of("", "ttyUSB0", "COM3", "usb:403:6001", "usb:0403", "usb:0403:600g")) {
      assertThatThrownBy(() -> PortName.parse(text))
          .as(text)
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessage(
              "a serial port must be a path like /dev/ttyUSB0, usb-serial:NUMBER, or"
                  + " usb:VENDOR:PRODUCT with four hexadecimal digits each; found \""
                  + text
                  + "\"");
    }
    assertThatThrownBy(() -> PortName.parse("usb-serial:"))
        .hasMessage(
            "the number after usb-serial: must be 1 to 64 printable characters without blanks at"
                + " the ends");
  }

  @Test
  void aPortThatIsNotThereIsNotPluggedIn() {
    assertThatThrownBy(() -> PortName.parse("usb-serial:A600XYZ").locate(() -> List.of(BOARD)))
        .isInstanceOf(PortException.class)
        .hasMessage("port usb-serial:A600XYZ is not plugged in");
  }

  @Test
  void twoPortsOfOneNameAreAmbiguous() {
    assertThatThrownBy(() -> PortName.parse("usb:0403:6001").locate(() -> List.of(TWIN, ONE)))
        .isInstanceOf(PortException.class)
        .hasMessage(
            "port usb:0403:6001 is ambiguous: /dev/ttyUSB0 and /dev/ttyUSB1 answer to it; unplug"
                + " one, or name the port by its path or USB serial number");
  }

  @Test
  void onePortListedTwiceIsNotAmbiguous() throws PortException {
    assertThat(PortName.parse("usb:0403:6001").locate(() -> List.of(ONE, ONE)))
        .isEqualTo("/dev/ttyUSB0");
  }
}
