package witnessmark.doctor;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalLong;
import witnessmark.link.serial.PortException;
import witnessmark.link.serial.PortTrial;
import witnessmark.link.serial.SerialSettings;

/** The serial ports of a configuration. */
final class Ports {
  private final OptionalLong daemon;

  /**
   * @param daemon the process of a daemon at work, whose ports are left alone
   */
  Ports(OptionalLong daemon) {
    this.daemon = daemon;
  }

  static String area(SerialSettings settings) {
    return "port " + settings.name();
  }

  Finding look(SerialSettings settings) {
    return look(area(settings), settings);
  }

  private Finding look(String area, SerialSettings settings) {
    Path path;
    try {
      path = Path.of(PortTrial.locate(settings));
    } catch (PortException e) {
      return missing(area, e.getMessage());
    }
    if (!Files.exists(path)) {
      return missing(area, "port " + path + " is not plugged in");
    }
    if (PortTrial.isNone(path)) {
      return Finding.bad(
          area, path + " is not a serial port.", "Name the port in this [[serial]]. " + there());
    }
    OptionalLong holder = OpenFiles.holder(path);
    if (holder.isPresent() && holder.equals(daemon)) {
      return Finding.good(area, path + " is open in the running daemon.");
    }
    if (!Files.isReadable(path) || !Files.isWritable(path)) {
      return forbidden(area, path);
    }
    try {
      PortTrial.open(settings);
      return holder.isPresent()
          ? Finding.warn(
              area,
              path + " can be opened, but process " + holder.getAsLong() + " has it open, too.",
              "Make sure that it takes no bytes away: ps -fp " + holder.getAsLong())
          : Finding.good(area, path + " can be opened.");
    } catch (PortException e) {
      return unopened(area, e.getMessage(), path, holder);
    }
  }

  private static Finding unopened(String area, String why, Path path, OptionalLong holder) {
    return holder.isPresent() && why.contains("in use")
        ? Finding.bad(
            area,
            path + " is in use by another program, process " + holder.getAsLong() + ".",
            "See what it is, and end it: ps -fp " + holder.getAsLong())
        : Finding.bad(area, Finding.sentence(why), "See who has it open: fuser -v " + path);
  }

  private static Finding missing(String area, String why) {
    return Finding.bad(
        area, Finding.sentence(why), "Plug it in, or correct port in this [[serial]]. " + there());
  }

  private static String there() {
    List<String> ports = PortTrial.there();
    return (ports.isEmpty() ? "None is there now" : "There are " + String.join(", ", ports))
        + "; names that stay: ls -l /dev/serial/by-id/";
  }

  private static Finding forbidden(String area, Path path) {
    String group = "dialout";
    try {
      group = String.valueOf(Files.getAttribute(path, "posix:group"));
    } catch (IOException | UnsupportedOperationException e) {
      // the usual one has to do
    }
    String user = System.getProperty("user.name");
    return Finding.bad(
        area,
        path + " belongs to the group " + group + ", which the user " + user + " is not in.",
        "Take the user who runs the daemon into it, then start the daemon anew: usermod -aG "
            + group
            + " "
            + user);
  }
}
