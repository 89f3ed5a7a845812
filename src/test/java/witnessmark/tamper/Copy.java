package witnessmark.tamper;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;

/** A copy of a log's directory in the hands of somebody who has files and SQL, but no key. */
final class Copy {
  /** Everything that counts or follows, by the tables and by each index. */
  private static final List<String> QUERIES =
      List.of(
          "SELECT * FROM entry NOT INDEXED ORDER BY n",
          "SELECT * FROM checkpoint",
          "SELECT * FROM tile ORDER BY level, idx",
          "SELECT * FROM trace NOT INDEXED ORDER BY n",
          "SELECT * FROM job NOT INDEXED ORDER BY job",
          "SELECT job, n FROM trace INDEXED BY trace_job WHERE job IS NOT NULL ORDER BY job, n",
          "SELECT n FROM trace INDEXED BY trace_shop WHERE scope = 'shop' ORDER BY n",
          "SELECT wrench, n FROM trace INDEXED BY trace_wrench WHERE wrench IS NOT NULL"
              + " ORDER BY wrench, n",
          "SELECT wrench, number, fingerprint, n FROM trace INDEXED BY trace_seen"
              + " WHERE fingerprint IS NOT NULL ORDER BY wrench, number, fingerprint, n",
          "SELECT at, n FROM trace INDEXED BY trace_at ORDER BY at, n",
          "SELECT unit, opened, job FROM job INDEXED BY job_unit ORDER BY unit, opened, job",
          "SELECT status, job FROM job INDEXED BY job_unfinished WHERE ended IS NULL"
              + " ORDER BY status, job");

  private final Path directory;

  Copy(Path directory) {
    this.directory = directory;
  }

  Path database() {
    return directory.resolve("ledger.db");
  }

  Path wal() {
    return directory.resolve("ledger.db-wal");
  }

  Path verifier() {
    return directory.resolve("ledger.pub");
  }

  byte[] read(Path file) {
    try {
      return Files.readAllBytes(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  void write(Path file, byte[] bytes) {
    try {
      Files.write(file, bytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Takes the triggers away, runs the statements, and puts the triggers back. */
  void disarmed(String... statements) {
    try (Connection db = connect()) {
      List<String> triggers = new ArrayList<>();
      List<String> drops = new ArrayList<>();
      try (Statement s = db.createStatement();
          ResultSet rows =
              s.executeQuery("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'")) {
        while (rows.next()) {
          drops.add("DROP TRIGGER " + rows.getString(1));
          triggers.add(rows.getString(2));
        }
      }
      run(db, drops);
      run(db, List.of(statements));
      run(db, triggers);
    } catch (SQLException e) {
      throw new IllegalStateException(String.join("; ", statements), e);
    }
  }

  private static void run(Connection db, List<String> statements) throws SQLException {
    try (Statement s = db.createStatement()) {
      for (String sql : statements) {
        s.execute(sql);
      }
    }
  }

  /** Puts one value, which the statement leaves open once. */
  void put(String sql, Object value) {
    try (Connection db = connect();
        PreparedStatement s = db.prepareStatement(sql)) {
      s.setObject(1, value);
      s.executeUpdate();
    } catch (SQLException e) {
      throw new IllegalStateException(sql, e);
    }
  }

  /** The first column of the rows. */
  List<Object> ask(String sql) {
    try (Connection db = connect();
        Statement s = db.createStatement();
        ResultSet rows = s.executeQuery(sql)) {
      List<Object> all = new ArrayList<>();
      while (rows.next()) {
        all.add(rows.getObject(1));
      }
      return all;
    } catch (SQLException e) {
      throw new IllegalStateException(sql, e);
    }
  }

  /** A hash of all that anybody can read here; {@code unreadable} where it cannot be read. */
  String rows() {
    try (Connection db = connect();
        Statement s = db.createStatement()) {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      for (String query : QUERIES) {
        try (ResultSet rows = s.executeQuery(query)) {
          int columns = rows.getMetaData().getColumnCount();
          while (rows.next()) {
            for (int i = 1; i <= columns; i++) {
              byte[] value = rows.getBytes(i);
              digest.update((byte) (value == null ? 0 : 1));
              digest.update(Integer.toString(value == null ? 0 : value.length).getBytes());
              digest.update(value == null ? new byte[0] : value);
            }
            digest.update((byte) 2);
          }
        }
        digest.update((byte) 3);
      }
      return HexFormat.of().formatHex(digest.digest());
    } catch (SQLException e) {
      return "unreadable";
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  Connection connect() throws SQLException {
    return DriverManager.getConnection("jdbc:sqlite:" + database());
  }
}
