package witnessmark.ledger.sqlite;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import witnessmark.ledger.LedgerException;

/**
 * Whether the files that are open are still those in the log's place. A process goes on writing
 * into a file that somebody removed or replaced, and nobody would ever find what it wrote.
 */
final class Footing {
  private final Path file;
  private final Path wal;
  private final Object fileKey;
  private Object walKey;
  private boolean lost;

  /** Of a log just opened. */
  Footing(Path file) {
    this.file = file;
    this.wal = file.resolveSibling(file.getFileName() + "-wal");
    this.fileKey = key(file);
  }

  /**
   * @throws LedgerException when another file, or none, is in the place of one of them
   */
  void check() {
    Object now = key(wal);
    if (walKey == null) {
      walKey = now; // it is made by the first who reads or writes
    }
    if (lost || !same(fileKey, key(file)) || !same(walKey, now)) {
      lost = true;
      throw new LedgerException(
          "The log's file "
              + file
              + " was removed or replaced while it was in use. Put it back in its place, with"
              + " "
              + wal.getFileName()
              + " beside it if there is one.");
    }
  }

  /** Whether a check has failed; what is open then must not be closed. */
  boolean lost() {
    return lost;
  }

  /** What was not there before, or has no key on this system, tells nothing. */
  private static boolean same(Object before, Object now) {
    return before == null || before.equals(now);
  }

  private static Object key(Path path) {
    try {
      return Files.readAttributes(path, BasicFileAttributes.class).fileKey();
    } catch (IOException e) {
      return null;
    }
  }
}
