package witnessmark.ledger.sqlite;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.sqlite.SQLiteConfig;
import witnessmark.ledger.FileFault;
import witnessmark.ledger.verify.RawLedger;
import witnessmark.ledger.verify.Rows;

/**
 * Reads a {@code ledger.db} as it is stored, without changing it.
 *
 * <p>Everything is read in one transaction, so it is the state of one moment although the bridge
 * may append meanwhile. Close it soon: while it is open the write-ahead log cannot shrink.
 */
public final class RawReader implements RawLedger {
  private static final byte[] HEADER = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);
  private static final long APPLICATION_ID = 1465142593;
  private static final long NEWEST_VERSION = 1;
  private static final int BUSY_MS = 5000;
  private static final int COMPLAINTS = 10;
  private final Path file;
  private final Connection connection;

  private RawReader(Path file, Connection connection) {
    this.file = file;
    this.connection = connection;
  }

  /**
   * Opens a ledger file for reading.
   *
   * @throws IOException when it is missing, no ledger, made by a newer version, or cannot be
   *     opened; the message says what to do
   */
  public static RawReader open(Path file) throws IOException {
    if (!Files.isRegularFile(file)) {
      throw new IOException(
          "no ledger at "
              + file
              + ": expected the file ledger.db that the bridge made; check the data directory or"
              + " restore the ledger from a backup");
    }
    checkHeader(file);
    RawReader reader = connect(file);
    try {
      reader.checkLedger();
      return reader;
    } catch (IOException | RuntimeException e) {
      reader.close();
      throw e;
    }
  }

  private static void checkHeader(Path file) throws IOException {
    byte[] head;
    try (InputStream in = Files.newInputStream(file)) {
      head = in.readNBytes(HEADER.length);
    } catch (IOException e) {
      throw new IOException(
          file + " cannot be read: " + FileFault.why(e) + "; run this as a user who may read it",
          e);
    }
    if (!Arrays.equals(head, HEADER)) {
      throw new IOException(
          file
              + " is not a database: it does not begin with \"SQLite format 3\"; restore the"
              + " ledger from a backup");
    }
  }

  private static RawReader connect(Path file) throws IOException {
    SQLiteConfig config = new SQLiteConfig();
    config.setReadOnly(true);
    config.setBusyTimeout(BUSY_MS);
    // The driver takes what follows a ? in a plain path for options; a file: URL has it escaped.
    String url = "jdbc:sqlite:file:" + file.toAbsolutePath().toUri().getRawPath();
    Connection connection = null;
    try {
      connection = config.createConnection(url);
      execute(connection, "BEGIN");
      // The first read, not BEGIN, is what fixes the state that all later ones see.
      execute(connection, "SELECT count(*) FROM sqlite_schema");
      return new RawReader(file, connection);
    } catch (SQLException e) {
      if (connection != null) {
        new RawReader(file, connection).close();
      }
      throw new IOException(
          file
              + " cannot be opened as a ledger: "
              + (Database.readOnly(e) ? "this user may not write beside it" : e.getMessage())
              + "; check that its directory can be written (SQLite keeps ledger.db-shm there), copy"
              + " ledger.db together with ledger.db-wal to one that can, or restore a backup",
          e);
    }
  }

  private static void execute(Connection connection, String sql) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }

  private void checkLedger() throws IOException {
    long version = userVersion();
    if (applicationId() != APPLICATION_ID && !hasEntries()) {
      throw new IOException(
          file
              + " is a database but not a ledger: expected application_id "
              + APPLICATION_ID
              + " and a table entry; name the bridge's ledger.db");
    }
    if (version > NEWEST_VERSION) {
      throw new IOException(
          file
              + " has format version "
              + version
              + ", this program reads version "
              + NEWEST_VERSION
              + "; use the version of the program that made it, or a newer one");
    }
  }

  private boolean hasEntries() throws IOException {
    try (Rows rows = rows("sqlite_schema", "SELECT 1 FROM sqlite_schema WHERE name = 'entry'")) {
      return rows.next();
    }
  }

  @Override
  public long applicationId() throws IOException {
    return pragma("application_id");
  }

  @Override
  public long userVersion() throws IOException {
    return pragma("user_version");
  }

  private long pragma(String name) throws IOException {
    try (Rows rows = rows(name, "PRAGMA " + name)) {
      return rows.next() && rows.value(0) instanceof Long value ? value : 0;
    }
  }

  @Override
  public List<String> complaints() throws IOException {
    List<String> found = new ArrayList<>();
    // A connection of its own: the rows are read meanwhile.
    try (RawReader own = connect(file);
        Rows rows = own.rows("file", "PRAGMA integrity_check(" + COMPLAINTS + ")")) {
      while (rows.next()) {
        found.add(String.valueOf(rows.value(0)));
      }
    }
    return found.equals(List.of("ok")) ? List.of() : found;
  }

  // NOT INDEXED: a damaged index must not hide a row from the check.

  @Override
  public Rows entries() throws IOException {
    return rows("entry", "SELECT n, bytes, link FROM entry NOT INDEXED ORDER BY n");
  }

  @Override
  public Rows checkpoints() throws IOException {
    return rows("checkpoint", "SELECT id, note FROM checkpoint NOT INDEXED");
  }

  @Override
  public Rows tiles(int level) throws IOException {
    return rows("tile", "SELECT idx, hash FROM tile WHERE level = " + level + " ORDER BY idx");
  }

  @Override
  public Rows otherTiles(int top) throws IOException {
    return rows(
        "tile",
        "SELECT level, idx FROM tile WHERE typeof(level) <> 'integer' OR level < 1 OR level > "
            + top);
  }

  @Override
  public Rows traces() throws IOException {
    return rows("trace", TraceQuery.of(connection));
  }

  @Override
  public Rows jobs() throws IOException {
    return rows(
        "job",
        "SELECT job, unit, procedure, revision, station, status, opened, ended"
            + " FROM job NOT INDEXED");
  }

  private Rows rows(String table, String sql) throws IOException {
    String where = "table " + table + " of " + file;
    try {
      Statement statement = connection.createStatement();
      try {
        ResultSet result = statement.executeQuery(sql);
        return new StoredRows(where, statement, result);
      } catch (SQLException e) {
        statement.close();
        throw e;
      }
    } catch (SQLException e) {
      throw StoredRows.failure(where, e);
    }
  }

  @Override
  public void close() {
    try {
      connection.close();
    } catch (SQLException e) {
      // Nothing was written, so nothing can be lost by a close that fails.
      return;
    }
  }
}
