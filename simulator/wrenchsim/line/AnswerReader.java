package wrenchsim.line;

import java.nio.charset.StandardCharsets;
import java.util.function.Consumer;

/**
 * Cuts bytes into lines, whatever the chunks; a line longer than 256 bytes is noise and dropped.
 */
final class AnswerReader {
  private static final int MOST_BYTES = 256;

  private final StringBuilder line = new StringBuilder();
  private boolean tooLong;

  /** Takes a chunk and hands over every line that it completes, without CR LF. */
  void take(byte[] bytes, int count, Consumer<String> complete) {
    for (char c : new String(bytes, 0, count, StandardCharsets.ISO_8859_1).toCharArray()) {
      if (c == '\n') {
        if (!tooLong && !line.isEmpty()) {
          complete.accept(line.toString());
        }
        line.setLength(0);
        tooLong = false;
      } else if (line.length() >= MOST_BYTES) {
        tooLong = true;
      } else if (c != '\r') {
        line.append(c);
      }
    }
  }
}
