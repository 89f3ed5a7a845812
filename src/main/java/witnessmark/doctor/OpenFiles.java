package witnessmark.doctor;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.OptionalLong;

/** Which process has a file open, as far as this user may see. */
final class OpenFiles {
  private OpenFiles() {}

  /** The first such process; empty where there is none, or where this cannot be told. */
  static OptionalLong holder(Path path) {
    try (DirectoryStream<Path> processes = Files.newDirectoryStream(Path.of("/proc"), "[0-9]*")) {
      Path real = path.toRealPath();
      for (Path process : processes) {
        if (holds(process, real)) {
          return OptionalLong.of(Long.parseLong(process.getFileName().toString()));
        }
      }
    } catch (IOException e) {
      return OptionalLong.empty(); // no Linux: opening it will tell
    }
    return OptionalLong.empty();
  }

  private static boolean holds(Path process, Path real) {
    try (DirectoryStream<Path> open = Files.newDirectoryStream(process.resolve("fd"))) {
      for (Path descriptor : open) {
        if (Files.readSymbolicLink(descriptor).equals(real)) {
          return true;
        }
      }
      return false;
    } catch (IOException | RuntimeException e) {
      return false; // another user's process, or one that ended meanwhile
    }
  }
}
