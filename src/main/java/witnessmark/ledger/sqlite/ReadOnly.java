package witnessmark.ledger.sqlite;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import org.sqlite.SQLiteConfig;

/** Connections that change nothing, each in a transaction that sees one state of the file. */
final class ReadOnly {
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

  private static Connection connect(Path file) throws IOException {
    SQLiteConfig config = new SQLiteConfig();
    config.setReadOnly(true);
    config.setBusyTimeout(BUSY_MS);
    // The driver takes what follows a ? in a plain path for options; a file: URL has it escaped.
    NativeLibrary.load();
    String url = "jdbc:sqlite:file:" + file.toAbsolutePath().toUri().getRawPath();
    try {
      return config.createConnection(url);
    } catch (SQLException e) {
      throw failure(file, e);
    }
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
            + (Database.readOnly(e) ? "this user may not write beside it" : e.getMessage())
            + "; check that its directory can be written (SQLite keeps ledger.db-shm there), copy"
            + " ledger.db together with ledger.db-wal to one that can, or restore a backup",
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
