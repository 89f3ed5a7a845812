package witnessmark.ledger.sqlite;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.function.LongConsumer;
import org.sqlite.SQLiteConnection;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;
import witnessmark.ledger.FileFault;
import witnessmark.ledger.Modes;

/**
 * Copies a ledger file as it is at one moment, checkpoint and all, while others append to it.
 *
 * <p>The pages are read within one read transaction, which in SQLite's WAL mode no writer waits
 * for. So the copy never has to begin anew, however much is appended meanwhile; only the
 * write-ahead log is not emptied until it is done.
 */
public final class OnlineCopy {
  /** Pages between two reports of how far it has come, some 8 MB. */
  private static final int STEP = 2000;

  private OnlineCopy() {}

  /**
   * Copies the log to a file that does not exist yet; the copy is one file by itself, for its owner
   * to write and its group to read, as the log is.
   *
   * @param percent hears now and then how far it has come, 0 to 100
   * @return how many entries it has
   * @throws IOException when one of them cannot be read or written; the message says what to do
   */
  public static long copy(Path from, Path to, LongConsumer percent) throws IOException {
    make(to);
    Still still = new Still(from);
    Connection source = ReadOnly.open(from);
    try {
      long entries = Database.number(source, "SELECT coalesce(max(n) + 1, 0) FROM entry");
      int code =
          source
              .unwrap(SQLiteConnection.class)
              .getDatabase()
              .backup(
                  "main",
                  to.toAbsolutePath().toString(),
                  (left, all) -> percent.accept(all == 0 ? 100 : 100L * (all - left) / all),
                  0,
                  0,
                  STEP);
      // The driver tells by this alone that it did not come to the end.
      if (code != SQLiteErrorCode.SQLITE_OK.code) {
        SQLiteErrorCode error = SQLiteErrorCode.getErrorCode(code);
        throw new SQLiteException(error.toString(), error);
      }
      still.check(source);
      alone(to);
      return entries;
    } catch (SQLException e) {
      throw new IOException(
          "the log "
              + from
              + " cannot be copied to "
              + to
              + ": "
              + Trouble.known(to, e)
                  .orElse(
                      e.getMessage()
                          + ". Check that there is room and that this user may write there"),
          e);
    } finally {
      ReadOnly.close(source);
    }
  }

  private static void make(Path file) throws IOException {
    try {
      Files.createFile(file, Modes.of("rw-r-----"));
    } catch (IOException e) {
      throw new IOException(
          file + " cannot be written: " + FileFault.why(e) + ". Name a place that can be", e);
    }
  }

  /** Without a write-ahead log beside it a file can be read where nothing can be written. */
  private static void alone(Path file) throws SQLException {
    try (Connection copy = DriverManager.getConnection("jdbc:sqlite:" + file)) {
      Database.execute(copy, "PRAGMA journal_mode=DELETE");
    }
  }
}
