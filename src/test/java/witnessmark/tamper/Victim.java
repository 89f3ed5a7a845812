package witnessmark.tamper;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import witnessmark.entry.Entry;
import witnessmark.ledger.LogKey;
import witnessmark.record.Shelf;

/**
 * A log that is tampered with.
 *
 * @param directory where it is, with nobody writing
 * @param entries what it holds
 * @param key its key
 * @param examiner holds what was kept outside
 */
record Victim(Path directory, List<Entry> entries, LogKey key, Examiner examiner) {
  static Victim closed(Path directory, long seed) {
    List<Entry> entries = History.entries(seed);
    new Shelf(directory, entries);
    return of(directory, directory, entries);
  }

  static Victim killed(Path directory, long seed) {
    Killed.leave(directory, seed);
    if (!Files.exists(directory.resolve("ledger.db-wal"))) {
      throw new IllegalStateException("the kill left no write-ahead log");
    }
    // what it holds is read from a copy: reading would bring the log into the file
    Path read = directory.resolveSibling(directory.getFileName() + "-read");
    copy(directory, read);
    return of(directory, read, History.entries(seed));
  }

  private static Victim of(Path directory, Path read, List<Entry> entries) {
    LogKey key = History.key(directory);
    String rows = new Copy(read).rows();
    Examiner examiner = new Examiner(key.verifierLine(), History.signed(key, entries), rows);
    return new Victim(directory, entries, key, examiner);
  }

  Copy copyTo(Path other) {
    copy(directory, other);
    return new Copy(other);
  }

  private static void copy(Path from, Path to) {
    try (Stream<Path> files = Files.list(from)) {
      Files.createDirectories(to);
      for (Path file : files.toList()) {
        String name = file.getFileName().toString();
        // whoever tampers has no key, and the index of a write-ahead log is made anew
        if (!name.equals("ledger.key") && !name.endsWith("-shm")) {
          Files.copy(file, to.resolve(name));
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
