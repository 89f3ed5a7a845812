package witnessmark.ledger.sqlite;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import org.sqlite.SQLiteConfig;

/** Connections that change nothing, each in a transaction that sees one state of the file. */
final class ReadOnly {
  /** Of the URL of a connection that takes no locks. */
  static final String IMMUTABLE = "?immutable=1";

  private static final int BUSY_MS = 5000;

  /** Between two attempts a bridge at work rarely commits, and never each of so many times. */
  private static final int ATTEMPTS = 200;

  private ReadOnly() {}

  /** One connection. */
  static Connection open(Path file) throws IOException {
    Connection connection = connect(file);
    try {
      begin(connection);
      return connection;
    } catch (SQLException e) {
      close(connection);
      throw failure(file, e);
    }
  }

  /** Two connections, for two threads, that see the same state. */
  static Connection[] twins(Path file) throws IOException {
    Connection one = connect(file);
    Connection other = null;
    try {
      other = connect(file);
      for (int i = 0; i < ATTEMPTS; i++) {
        if (began(one, other)) {
          return new Connection[] {one, other};
        }
      }
      throw new SQLException("it is written to without a pause");
    } catch (SQLException e) {
      close(one);
      close(other);
      throw failure(file, e);
    } catch (IOException e) {
      close(one);
      throw e;
    }
  }

  private static boolean began(Connection one, Connection other) throws SQLException {
    // It changes for a connection when any other has committed.
    long before = Database.number(one, "PRAGMA data_version");
    begin(other);
    begin(one);
    if (Database.number(one, "PRAGMA data_version") == before) {
      return true;
    }
    execute(one, "COMMIT");
    execute(other, "COMMIT");
    return false;
  }

  private static void begin(Connection connection) throws SQLException {
    execute(connection, "BEGIN");
    // The first read, not BEGIN, is what fixes the state that all later ones see.
    execute(connection, "SELECT count(*) FROM sqlite_schema");
  }

  /**
   * One connection without a transaction.
   *
   * <p>SQLite reads a log beside which nothing can be written only while its {@code -wal} and
   * {@code -shm} are there, as they are while a bridge works. Where there is no write-ahead log,
   * all is in the file itself, which is read without locks then; see {@link Still}.
   */
  static Connection connect(Path file) throws IOException {
    // The driver takes what follows a ? in a plain path for options; a file: URL has it escaped.
    NativeLibrary.load();
    String url = "jdbc:sqlite:file:" + file.toAbsolutePath().toUri().getRawPath();
    try {
      return tried(url);
    } catch (SQLException e) {
      if (!Trouble.nothingBeside(e) || pending(file)) {
        throw failure(file, e);
      }
    }
    try {
      return tried(url + IMMUTABLE);
    } catch (SQLException e) {
      throw failure(file, e);
    }
  }

  private static Connection tried(String url) throws SQLException {
    SQLiteConfig config = new SQLiteConfig();
    config.setReadOnly(true);
    config.setBusyTimeout(BUSY_MS);
    Connection connection = config.createConnection(url);
    try {
      // Opening reads nothing yet.
      execute(connection, "SELECT count(*) FROM sqlite_schema");
      return connection;
    } catch (SQLException e) {
      close(connection);
      throw e;
    }
  }

  /** Whether something that counts is beside the file. */
  private static boolean pending(Path file) {
    for (String end : List.of("-wal", "-journal")) {
      Path beside = file.resolveSibling(file.getFileName() + end);
      try {
        if (Files.exists(beside) && Files.size(beside) > 0) {
          return true;
        }
      } catch (IOException e) {
        return true;
      }
    }
    return false;
  }

  private static void execute(Connection connection, String sql) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }

  private static IOException failure(Path file, SQLException e) {
    return new IOException(
        file
            + " cannot be opened as a ledger: "
            + (Trouble.nothingBeside(e)
                ? "its newest entries are in "
                    + file.getFileName()
                    + "-wal, which SQLite reads only where it may write beside it, and nothing can"
                    + " be written to "
                    + file.toAbsolutePath().getParent()
                    + ". Copy all its files but ledger.key to a directory of your own, and name"
                    + " that with --data"
                : Trouble.known(file, e)
                    .orElse(
                        e.getMessage() + "; check that the file is whole, or restore a backup")),
        e);
  }

  static void close(Connection connection) {
    try {
      if (connection != null) {
        connection.close();
      }
    } catch (SQLException e) {
      // Nothing was written, so nothing can be lost by a close that fails.
      return;
    }
  }
}
