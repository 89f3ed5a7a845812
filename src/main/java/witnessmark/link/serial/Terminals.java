package witnessmark.link.serial;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Which device files are serial lines, as the kernel's list of terminal drivers tells. */
final class Terminals {
  private static final Path DRIVERS = Path.of("/proc/tty/drivers");

  private Terminals() {}

  /** Whether what is there is surely no serial line: a file, a directory, another device. */
  static boolean ruleOut(Path path) {
    try {
      if (Files.isRegularFile(path) || Files.isDirectory(path)) {
        return true;
      }
      long device = ((Number) Files.getAttribute(path, "unix:rdev")).longValue();
      return Files.exists(path) && !among(Files.readAllLines(DRIVERS), device);
    } catch (IOException | UnsupportedOperationException e) {
      return false; // no Linux: opening it will tell
    }
  }

  /**
   * Whether the device belongs to a driver of lines that something can be connected to.
   *
   * @param drivers lines of /proc/tty/drivers (proc(5)): name, node, major number, range of minor
   *     numbers, type
   * @param device its number, as stat(2) of Linux packs it (makedev(3))
   */
  static boolean among(List<String> drivers, long device) {
    long major = (device >> 8 & 0xfff) | (device >> 32 & 0xfffff000L);
    long minor = (device & 0xff) | (device >> 12 & 0xffffff00L);
    return drivers.stream()
        .map(line -> line.trim().split("\\s+"))
        .anyMatch(
            words ->
                words.length >= 4
                    && words[2].equals(Long.toString(major))
                    && within(words[3], minor)
                    && (words.length < 5 || !words[4].matches("(system|console).*")));
  }

  private static boolean within(String range, long minor) {
    String[] ends = range.split("-");
    try {
      return Long.parseLong(ends[0]) <= minor && minor <= Long.parseLong(ends[ends.length - 1]);
    } catch (NumberFormatException e) {
      return true; // another form than is known here: opening it will tell
    }
  }
}
