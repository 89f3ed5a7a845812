package witnessmark.log;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/** In which form the log is written. */
public enum Form {
  /** Lines for people, each with its time. */
  TEXT,
  /** One JSON object a line. */
  JSON,
  /** Lines for the systemd journal: a priority in front, no time. */
  JOURNAL;

  /** The word on the command line. */
  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }

  /**
   * What fits where the standard error output goes: JOURNAL when systemd says that it is its
   * journal's, else TEXT.
   *
   * @param stream the variable JOURNAL_STREAM, device and inode (systemd.exec(5)), or null
   */
  public static Form fitting(String stream) {
    return stream != null && stream.equals(standardError()) ? JOURNAL : TEXT;
  }

  private static String standardError() {
    try {
      Path error = Path.of("/proc/self/fd/2");
      return Files.getAttribute(error, "unix:dev") + ":" + Files.getAttribute(error, "unix:ino");
    } catch (IOException | UnsupportedOperationException | IllegalArgumentException e) {
      return ""; // no Linux
    }
  }
}
