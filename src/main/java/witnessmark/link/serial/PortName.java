package witnessmark.link.serial;

import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import witnessmark.torque.Label;

/** What a serial port is called in the configuration: a path, or the USB adapter wherever it is. */
public sealed interface PortName {
  /** The text it is configured by. */
  String text();

  /**
   * Finds the one path to open now.
   *
   * @throws PortException when no port or more than one port has this name
   */
  String locate(PortFinder finder) throws PortException;

  /**
   * Reads {@code /dev/ttyUSB0}, {@code usb-serial:A600XYZ} or {@code usb:0403:6001}.
   *
   * @throws IllegalArgumentException when the text is none of these
   */
  static PortName parse(String text) {
    Matcher usb = ByUsbId.FORM.matcher(text);
    if (usb.matches()) {
      return new ByUsbId(Integer.parseInt(usb.group(1), 16), Integer.parseInt(usb.group(2), 16));
    }
    if (text.startsWith(ByUsbSerial.PREFIX)) {
      return new ByUsbSerial(text.substring(ByUsbSerial.PREFIX.length()));
    }
    if (text.startsWith("/")) {
      return new ByPath(text);
    }
    throw new IllegalArgumentException(
        "a serial port must be a path like /dev/ttyUSB0, usb-serial:NUMBER, or usb:VENDOR:PRODUCT"
            + " with four hexadecimal digits each; found \""
            + text
            + "\"");
  }

  /** A port by its path; the device behind it may change. */
  record ByPath(String path) implements PortName {
    public ByPath {
      if (!path.startsWith("/") || path.indexOf('\0') >= 0) {
        throw new IllegalArgumentException(
            "a serial port's path must begin with /, found \"" + path + "\"");
      }
    }

    @Override
    public String text() {
      return path;
    }

    @Override
    public String locate(PortFinder finder) {
      return path;
    }
  }

  /** A port by the serial number of its USB adapter. */
  record ByUsbSerial(String serial) implements PortName {
    private static final String PREFIX = "usb-serial:";

    public ByUsbSerial {
      Label.check("the number after usb-serial:", serial);
    }

    @Override
    public String text() {
      return PREFIX + serial;
    }

    @Override
    public String locate(PortFinder finder) throws PortException {
      return only(this, finder.ports().stream().filter(p -> p.usbSerial().equals(serial)).toList());
    }
  }

  /** A port by the make of its USB adapter, where only one such is plugged in. */
  record ByUsbId(int vendor, int product) implements PortName {
    private static final Pattern FORM = Pattern.compile("usb:([0-9a-fA-F]{4}):([0-9a-fA-F]{4})");

    public ByUsbId {
      if (vendor < 0 || vendor > 0xFFFF || product < 0 || product > 0xFFFF) {
        throw new IllegalArgumentException("USB numbers must be 0 to FFFF");
      }
    }

    @Override
    public String text() {
      return String.format(Locale.ROOT, "usb:%04x:%04x", vendor, product);
    }

    @Override
    public String locate(PortFinder finder) throws PortException {
      return only(
          this,
          finder.ports().stream()
              .filter(p -> p.vendor() == vendor && p.product() == product)
              .toList());
    }
  }

  private static String only(PortName name, List<FoundPort> found) throws PortException {
    List<String> paths = found.stream().map(FoundPort::path).distinct().sorted().toList();
    if (paths.isEmpty()) {
      throw new PortException("port " + name.text() + " is not plugged in");
    }
    if (paths.size() > 1) {
      throw new PortException(
          "port "
              + name.text()
              + " is ambiguous: "
              + String.join(" and ", paths)
              + " answer to it; unplug one, or name the port by its path or USB serial number");
    }
    return paths.get(0);
  }
}
