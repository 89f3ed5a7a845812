package witnessmark.link.serial;

import java.util.Objects;

/**
 * A serial port that is plugged in now.
 *
 * @param path where it can be opened
 * @param usbSerial the serial number of the USB adapter, empty where there is none
 * @param vendor the USB vendor number, -1 where there is none
 * @param product the USB product number, -1 where there is none
 */
public record FoundPort(String path, String usbSerial, int vendor, int product) {
  public FoundPort {
    Objects.requireNonNull(path, "path");
    Objects.requireNonNull(usbSerial, "usbSerial");
  }
}
