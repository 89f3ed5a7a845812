package wrenchsim;

import java.nio.file.Path;
import java.util.Optional;
import wrenchsim.line.Line;
import wrenchsim.line.RealPort;
import wrenchsim.line.VirtualLine;

/**
 * How a wrench speaks.
 *
 * @param line its serial line; without one it speaks MQTT
 */
record Via(Optional<Line> line) {
  static final int USUAL_BAUD = 115_200;

  /** Reads {@code mqtt}, {@code virtual:LINK} or {@code port:PATH}. */
  static Via parse(String text, int baud) {
    if (text.equals("mqtt")) {
      return new Via(Optional.empty());
    }
    if (text.matches("virtual:.+")) {
      return new Via(Optional.of(new VirtualLine(Path.of(text.substring(8)))));
    }
    if (text.matches("port:.+")) {
      return new Via(Optional.of(new RealPort(text.substring(5), baud)));
    }
    throw new IllegalArgumentException(
        "via is mqtt, virtual:LINK or port:PATH, but got '" + text + "'");
  }
}
