package witnessmark.benchmark;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** Directories for one measurement each. */
final class Directories {
  private Directories() {}

  static Path fresh(Path parent, String name) {
    try {
      return Files.createDirectories(parent.resolve(name));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static void delete(Path directory) {
    if (!Files.exists(directory)) {
      return;
    }
    try (Stream<Path> all = Files.walk(directory)) {
      List<Path> deepestFirst = all.sorted(Comparator.reverseOrder()).toList();
      for (Path path : deepestFirst) {
        Files.delete(path);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
