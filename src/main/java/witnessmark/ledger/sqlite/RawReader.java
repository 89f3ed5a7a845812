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
import java.util.Set;
import witnessmark.ledger.FileFault;
import witnessmark.ledger.verify.RawLedger;
import witnessmark.ledger.verify.Rows;

/**
 * Reads a {@code ledger.db} as it is stored, without changing it.
 *
 * <p>Everything is read in transactions that see the state of one moment, although the bridge may
 * append meanwhile. Close it soon: while it is open the write-ahead log cannot shrink.
 */
public final class RawReader implements RawLedger {
  private static final byte[] HEADER = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);
  private static final long APPLICATION_ID = 1465142593;
  private static final long NEWEST_VERSION = 1;
  private static final int COMPLAINTS = 10;
  private final Path file;
  private final Connection connection;

  /** For the rows of table entry, which another thread may go through. */
  private final Connection beside;

  private final Still still;

  private RawReader(Path file, Still still, Connection connection, Connection beside) {
    this.file = file;
    this.still = still;
    this.connection = connection;
    this.beside = beside;
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
              + " put a backup in its place with witnessmark ledger restore");
    }
    checkHeader(file);
    Still still = new Still(file);
    Connection[] twins = ReadOnly.twins(file);
    RawReader reader = new RawReader(file, still, twins[0], twins[1]);
    try {
      reader.checkLedger();
      return reader;
    } catch (IOException | RuntimeException e) {
      reader.disconnect();
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

  @Override
  public Rows schema() throws IOException {
    return rows("sqlite_schema", "SELECT type, name, tbl_name, sql FROM sqlite_schema");
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
    Connection own = ReadOnly.open(file);
    try (Rows rows = rows(own, "file", "PRAGMA integrity_check(" + COMPLAINTS + ")", Set.of())) {
      while (rows.next()) {
        found.add(String.valueOf(rows.value(0)));
      }
    } finally {
      ReadOnly.close(own);
    }
    return found.equals(List.of("ok")) ? List.of() : found;
  }

  // NOT INDEXED: a damaged index must not hide a row from the check.

  @Override
  public Rows entries() throws IOException {
    String sql = "SELECT n, bytes, link FROM entry NOT INDEXED ORDER BY n";
    return rows(beside, "entry", sql, strictEntry() ? Set.of(1, 2) : Set.of());
  }

  /** Whether the table is declared to hold just BLOBs there; then integrity_check asks for them. */
  private boolean strictEntry() {
    String sql =
        "SELECT (SELECT count(*) FROM pragma_table_list('entry') WHERE schema = 'main' AND strict)"
            + " = 1 AND (SELECT count(*) FROM pragma_table_info('entry')"
            + " WHERE name IN ('bytes', 'link') AND type = 'BLOB') = 2";
    try (Rows rows = rows(beside, "entry", sql, Set.of())) {
      return rows.next() && Long.valueOf(1).equals(rows.value(0));
    } catch (IOException e) {
      // A schema too damaged to tell is as good as none; reading the rows will say so.
      return false;
    }
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
    return rows(connection, "trace", TraceQuery.of(connection), TraceQuery.BLOBS);
  }

  @Override
  public Rows jobs() throws IOException {
    return rows(
        "job",
        "SELECT job, unit, procedure, revision, station, status, opened, ended"
            + " FROM job NOT INDEXED");
  }

  private Rows rows(String table, String sql) throws IOException {
    return rows(connection, table, sql, Set.of());
  }

  private Rows rows(Connection on, String table, String sql, Set<Integer> blobs)
      throws IOException {
    String where = "table " + table + " of " + file;
    try {
      Statement statement = on.createStatement();
      try {
        ResultSet result = statement.executeQuery(sql);
        return new StoredRows(where, statement, result, blobs);
      } catch (SQLException e) {
        statement.close();
        throw e;
      }
    } catch (SQLException e) {
      throw StoredRows.failure(where, e);
    }
  }

  /**
   * Ends the reading.
   *
   * @throws witnessmark.ledger.LedgerException when the file was written to meanwhile and nothing
   *     kept the writer off, so that what was read counts for nothing
   */
  @Override
  public void close() {
    try {
      still.check(connection);
    } finally {
      disconnect();
    }
  }

  private void disconnect() {
    ReadOnly.close(beside);
    ReadOnly.close(connection);
  }
}
