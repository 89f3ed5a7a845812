package witnessmark.daemon;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Comparator;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import witnessmark.ledger.Durable;

/**
 * A directory that checkpoints of one log are dropped into, each a file of its own by how many
 * entries it signs. None is ever replaced, and none that signs less than another comes after it.
 */
final class DropDirectory {
  private static final Pattern NAME = Pattern.compile("checkpoint-([0-9]{12,18})\\.txt");

  private final Path directory;

  DropDirectory(Path directory) {
    this.directory = directory;
  }

  /** A checkpoint contradicts one that was dropped before; the message says how. */
  static final class ContradictionException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    ContradictionException(String message) {
      super(message);
    }
  }

  /**
   * Drops a checkpoint, whole or not at all; nothing where the newest one there is the same.
   *
   * @return the new file
   * @throws ContradictionException when one that was dropped before signs more, or as much of
   *     another history
   * @throws IOException when the directory cannot be read or written
   */
  Optional<Path> put(String note) throws IOException {
    long size = Long.parseLong(note.split("\n", 3)[1]);
    Optional<Path> newest = newest();
    if (newest.isPresent()) {
      long seen = size(newest.get());
      if (seen == size && Files.readString(newest.get()).equals(note)) {
        return Optional.empty();
      }
      if (seen >= size) {
        throw new ContradictionException(
            "The log has "
                + size
                + " entries, but "
                + newest.get()
                + " signs "
                + seen
                + (seen == size ? " of another history" : "")
                + ": an older or another log was put in its place. Run: witnessmark ledger verify"
                + " --since "
                + directory);
      }
    }
    Path file = directory.resolve("checkpoint-%012d.txt".formatted(size));
    Path work = directory.resolve("." + file.getFileName() + ".unfinished");
    // A crash before the move leaves a hidden file, which the next one of that size replaces.
    Files.writeString(work, note);
    Durable.force(work);
    Files.move(work, file, StandardCopyOption.ATOMIC_MOVE);
    Durable.force(directory);
    return Optional.of(file);
  }

  private Optional<Path> newest() throws IOException {
    try (Stream<Path> files = Files.list(directory)) {
      return files
          .filter(f -> NAME.matcher(f.getFileName().toString()).matches())
          .max(Comparator.comparingLong(DropDirectory::size));
    }
  }

  private static long size(Path file) {
    Matcher name = NAME.matcher(file.getFileName().toString());
    if (!name.matches()) {
      throw new IllegalArgumentException(file + " is no dropped checkpoint");
    }
    return Long.parseLong(name.group(1));
  }
}
