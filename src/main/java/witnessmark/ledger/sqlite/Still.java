package witnessmark.ledger.sqlite;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import witnessmark.ledger.LedgerException;

/**
 * Whether a file that is read without any lock, as where nothing can be written beside it, is still
 * as it was when that began: somebody else may be able to write it.
 */
final class Still {
  private final Path file;
  private final List<Object> before;

  /** Of a file about to be opened. */
  Still(Path file) {
    this.file = file;
    this.before = seen(file);
  }

  /**
   * To be asked after reading, before anything is made of what was read.
   *
   * @throws LedgerException when it was read without locks, and written to meanwhile
   */
  void check(Connection connection) {
    try {
      if (connection.getMetaData().getURL().endsWith(ReadOnly.IMMUTABLE)
          && !before.equals(seen(file))) {
        throw new LedgerException(
            "The log "
                + file
                + " was written to while it was read by a user who has no right to keep a writer"
                + " off. Run this again.");
      }
    } catch (SQLException e) {
      throw Trouble.of("read", file, e);
    }
  }

  private static List<Object> seen(Path file) {
    try {
      BasicFileAttributes a = Files.readAttributes(file, BasicFileAttributes.class);
      return List.of(a.size(), a.lastModifiedTime(), String.valueOf(a.fileKey()));
    } catch (IOException e) {
      return List.of();
    }
  }
}
