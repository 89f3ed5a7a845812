package witnessmark.ledger.verify;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;

/** A small writer of ledger files for tests, after the published format and nothing else. */
final class LedgerFile {
  private static final String[] COLUMNS = {
    "kind",
    "at",
    "scope",
    "job",
    "station",
    "fastener",
    "wrench",
    "number",
    "operator",
    "verdict",
    "effect",
    "fingerprint"
  };

  private final Path file;
  private final TestKey key;

  LedgerFile(Path file) {
    this(file, TestKey.first(TestKey.ORIGIN));
  }

  private LedgerFile(Path file, TestKey key) {
    this.file = file;
    this.key = key;
  }

  static LedgerFile write(Path file, Shop shop) throws SQLException {
    return write(file, shop, TestKey.first(TestKey.ORIGIN));
  }

  static LedgerFile write(Path file, Shop shop, TestKey key) throws SQLException {
    LedgerFile ledger = new LedgerFile(file, key);
    try (Connection db = ledger.connect()) {
      ledger.schema(db);
      try (Statement statement = db.createStatement()) {
        statement.execute("BEGIN");
        ledger.fill(db, shop);
        statement.execute("COMMIT");
      }
    }
    return ledger;
  }

  Path file() {
    return file;
  }

  TestKey key() {
    return key;
  }

  Connection connect() throws SQLException {
    return DriverManager.getConnection("jdbc:sqlite:" + file);
  }

  /** Changes the file behind the bridge's back. */
  int tamper(String sql, Object... values) throws SQLException {
    try (Connection db = connect();
        PreparedStatement statement = db.prepareStatement(sql)) {
      set(statement, values);
      return statement.executeUpdate();
    }
  }

  /** The first column of the first row. */
  Object read(String sql) throws SQLException {
    try (Connection db = connect();
        Statement statement = db.createStatement();
        var result = statement.executeQuery(sql)) {
      return result.next() ? result.getObject(1) : null;
    }
  }

  private void schema(Connection db) throws SQLException {
    try (Statement s = db.createStatement()) {
      s.execute("PRAGMA journal_mode = WAL");
      s.execute("PRAGMA application_id = 1465142593");
      s.execute("PRAGMA user_version = 1");
      s.execute(
          "CREATE TABLE entry (n INTEGER PRIMARY KEY, bytes BLOB NOT NULL, link BLOB NOT NULL)");
      s.execute(
          "CREATE TABLE checkpoint (id INTEGER PRIMARY KEY CHECK (id = 0), note TEXT NOT NULL)");
      s.execute(
          "CREATE TABLE tile (level INTEGER, idx INTEGER, hash BLOB, PRIMARY KEY (level, idx))");
      s.execute(
          "CREATE TABLE trace (n INTEGER PRIMARY KEY, kind TEXT, at TEXT, scope TEXT, job TEXT,"
              + " station TEXT, fastener TEXT, wrench TEXT, number INTEGER, operator TEXT,"
              + " verdict TEXT, effect TEXT, fingerprint TEXT)");
      s.execute("CREATE INDEX trace_job ON trace (job)");
      s.execute(
          "CREATE TABLE job (job TEXT PRIMARY KEY, unit TEXT, procedure TEXT, revision TEXT,"
              + " station TEXT, status TEXT, opened INTEGER, ended INTEGER)");
      s.execute("CREATE TABLE cursor (name TEXT PRIMARY KEY, n INTEGER)");
    }
  }

  private void fill(Connection db, Shop shop) throws SQLException {
    List<byte[]> leaves = new ArrayList<>();
    byte[] link = new byte[32];
    for (int n = 0; n < shop.entries.size(); n++) {
      Made made = shop.entries.get(n);
      leaves.add(made.bytes());
      link = link(link, made.bytes());
      insert(db, "entry", n, made.bytes(), link);
      Object[] trace = new Object[1 + COLUMNS.length];
      trace[0] = n;
      for (int i = 0; i < COLUMNS.length; i++) {
        trace[i + 1] = made.trace().get(COLUMNS[i]);
      }
      insert(db, "trace", trace);
    }
    tiles(db, leaves);
    for (Object[] job : shop.jobs.values()) {
      insert(db, "job", job);
    }
    insert(db, "checkpoint", 0, key.checkpoint(leaves.size(), ExportRoot.mth(leaves)));
  }

  static byte[] link(byte[] before, byte[] bytes) {
    return Sha.of(before, Sha.of(new byte[] {0}, bytes));
  }

  private static void tiles(Connection db, List<byte[]> leaves) throws SQLException {
    for (int level = 1, span = 256; span <= leaves.size(); level++, span *= 256) {
      for (int idx = 0; (idx + 1) * span <= leaves.size(); idx++) {
        byte[] hash = ExportRoot.mth(leaves.subList(idx * span, (idx + 1) * span));
        insert(db, "tile", level, idx, hash);
      }
    }
  }

  static void insert(Connection db, String table, Object... values) throws SQLException {
    String marks = "?" + ", ?".repeat(values.length - 1);
    try (PreparedStatement s =
        db.prepareStatement("INSERT INTO " + table + " VALUES (" + marks + ")")) {
      set(s, values);
      s.executeUpdate();
    }
  }

  private static void set(PreparedStatement statement, Object... values) throws SQLException {
    for (int i = 0; i < values.length; i++) {
      statement.setObject(i + 1, values[i]);
    }
  }
}
