package witnessmark.ledger.sqlite;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Optional;
import java.util.Set;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;
import witnessmark.ledger.LedgerException;

/** What SQLite could not do, in words that say what to do. */
final class Trouble {
  private static final Set<SQLiteErrorCode> READONLY =
      Set.of(
          SQLiteErrorCode.SQLITE_READONLY,
          SQLiteErrorCode.SQLITE_READONLY_CANTINIT,
          SQLiteErrorCode.SQLITE_READONLY_CANTLOCK,
          SQLiteErrorCode.SQLITE_READONLY_RECOVERY,
          SQLiteErrorCode.SQLITE_READONLY_DIRECTORY);

  private static final Set<SQLiteErrorCode> DAMAGED =
      Set.of(
          SQLiteErrorCode.SQLITE_CORRUPT,
          SQLiteErrorCode.SQLITE_CORRUPT_VTAB,
          SQLiteErrorCode.SQLITE_NOTADB);

  private static final Set<SQLiteErrorCode> HELD =
      Set.of(
          SQLiteErrorCode.SQLITE_BUSY,
          SQLiteErrorCode.SQLITE_BUSY_RECOVERY,
          SQLiteErrorCode.SQLITE_BUSY_SNAPSHOT,
          SQLiteErrorCode.SQLITE_BUSY_TIMEOUT,
          SQLiteErrorCode.SQLITE_LOCKED);

  /** The second is what a full disk makes of the memory that is shared by way of a file. */
  private static final Set<SQLiteErrorCode> FULL =
      Set.of(SQLiteErrorCode.SQLITE_FULL, SQLiteErrorCode.SQLITE_IOERR_SHMSIZE);

  private Trouble() {}

  /**
   * The log cannot be used.
   *
   * @param done what was to be done with it, e.g. {@code read}
   */
  static LedgerException of(String done, Path file, SQLException e) {
    return new LedgerException(
        "The log " + file + " cannot be " + done + ": " + words(file, e) + ".", e);
  }

  private static String words(Path file, SQLException e) {
    Optional<String> known = known(file, e);
    if (known.isPresent()) {
      return known.get();
    }
    return e.getMessage()
        + (among(DAMAGED, e)
            ? ". The file is damaged: keep it as it is, see what is left of it with witnessmark"
                + " ledger verify, then move its directory aside and put a backup in its place with"
                + " witnessmark ledger restore"
            : ". Check that the disk has room and is writable, and that the file is whole");
  }

  /** What has a reason outside the file; without the last full stop. */
  static Optional<String> known(Path file, SQLException e) {
    if (among(HELD, e)) {
      return Optional.of(
          "another process holds it, and has for some seconds. Which one: fuser -v "
              + file
              + " (package psmisc). Wait until it has ended, or end it");
    } else if (among(READONLY, e)) {
      return Optional.of(
          "nothing can be written to "
              + file.toAbsolutePath().getParent()
              + ". Run as the user who owns the log, or, where its file system is mounted"
              + " read-only, mount it for writing");
    } else if (among(FULL, e)) {
      return Optional.of("there is no room left on its disk. Make room there");
    }
    return Optional.empty();
  }

  /** Whether it is that nothing can be written beside the file, which even reading may need. */
  static boolean nothingBeside(SQLException e) {
    return among(READONLY, e) || code(e) == SQLiteErrorCode.SQLITE_CANTOPEN;
  }

  private static SQLiteErrorCode code(SQLException e) {
    return e instanceof SQLiteException s ? s.getResultCode() : SQLiteErrorCode.UNKNOWN_ERROR;
  }

  private static boolean among(Set<SQLiteErrorCode> codes, SQLException e) {
    return codes.contains(code(e));
  }
}
