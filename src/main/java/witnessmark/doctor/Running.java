package witnessmark.doctor;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalLong;

/** Which daemon works on a data directory, as the kernel's list of locks tells. */
final class Running {
  private static final Path LOCKS = Path.of("/proc/locks");

  private Running() {}

  /**
   * The daemon's process; empty where none runs, or where this cannot be told. The lock itself is
   * not tried: a daemon that starts just then would be refused.
   */
  static OptionalLong on(Path directory) {
    try {
      Path lock = directory.resolve("daemon.lock");
      return Files.exists(lock)
          ? holder(
              Files.readAllLines(LOCKS),
              ((Number) Files.getAttribute(lock, "unix:ino")).longValue())
          : OptionalLong.empty();
    } catch (IOException | UnsupportedOperationException e) {
      return OptionalLong.empty();
    }
  }

  /**
   * Who holds a lock on a file.
   *
   * @param lines of /proc/locks (proc(5)), e.g. {@code 1: POSIX ADVISORY WRITE 812 08:02:7301 0
   *     EOF}
   */
  static OptionalLong holder(List<String> lines, long inode) {
    for (String line : lines) {
      String[] words = line.trim().split("\\s+");
      if (words.length == 8
          && words[1].equals("POSIX")
          && words[3].equals("WRITE")
          && words[5].endsWith(":" + inode)) {
        return OptionalLong.of(Long.parseLong(words[4]));
      }
    }
    return OptionalLong.empty();
  }
}
