package witnessmark.link.serial;

import java.nio.file.Path;
import java.util.List;

/** Tries a port as the link would open it. */
public final class PortTrial {
  private PortTrial() {}

  /**
   * The path that the port has now.
   *
   * @throws PortException when it is not plugged in, or its name fits several
   */
  public static String locate(SerialSettings settings) throws PortException {
    return settings.port().locate(new PluggedPorts());
  }

  /** Whether what is at the path is surely no serial port: a file, say, or another device. */
  public static boolean isNone(Path path) {
    return Terminals.ruleOut(path);
  }

  /** The ports that are there now, as they may be called in the configuration. */
  public static List<String> there() {
    return new PluggedPorts()
        .ports().stream()
            .map(
                p ->
                    p.usbSerial().isEmpty()
                        ? p.path()
                        : p.path() + " (usb-serial:" + p.usbSerial() + ")")
            .sorted()
            .toList();
  }

  /**
   * Opens the port and closes it again. Some devices begin anew when that happens, so that it is
   * not for a port at work.
   *
   * @throws PortException when it cannot be opened
   */
  public static void open(SerialSettings settings) throws PortException {
    Line.open(locate(settings), settings).close();
  }
}
