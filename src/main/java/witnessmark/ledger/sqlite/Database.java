package witnessmark.ledger.sqlite;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Arrays;
import java.util.List;
import org.sqlite.SQLiteConfig;
import witnessmark.ledger.LedgerException;

/** Opens the file with the settings that durability rests on, and knows its schema's version. */
final class Database {
  /** ASCII "WTMA". */
  private static final int APPLICATION = 0x57544d41;

  private static final int VERSION = 1;

  private Database() {}

  /**
   * A connection that syncs at every commit. Autocommit stays on: transactions are begun and ended
   * by statements, so that an idle connection holds no lock.
   */
  static Connection open(Path file) {
    NativeLibrary.load();
    Connection connection = null;
    try {
      SQLiteConfig config = new SQLiteConfig();
      // nobody asks for them, and the driver would run a query after every insert to know them
      config.setGetGeneratedKeys(false);
      connection = DriverManager.getConnection("jdbc:sqlite:" + file, config.toProperties());
      execute(
          connection,
          "PRAGMA busy_timeout=5000",
          "PRAGMA journal_mode=WAL",
          "PRAGMA synchronous=FULL",
          // pages: the file itself is brought up to date rarely, so that few commits wait for it
          "PRAGMA wal_autocheckpoint=4000",
          // bytes: what a long reader made of the WAL file is given back once he is gone
          "PRAGMA journal_size_limit=33554432",
          "PRAGMA recursive_triggers=ON");
      return connection;
    } catch (SQLException e) {
      ReadOnly.close(connection);
      throw Trouble.of("opened", file, e);
    }
  }

  /** Makes the tables in an empty file, all or nothing. */
  static void make(Path file) {
    try (Connection connection = open(file)) {
      execute(connection, "BEGIN IMMEDIATE");
      for (String statement : schema()) {
        execute(connection, statement);
      }
      execute(
          connection,
          "PRAGMA application_id=" + APPLICATION,
          "PRAGMA user_version=" + VERSION,
          "COMMIT");
    } catch (SQLException e) {
      throw Trouble.of("begun", file, e);
    }
  }

  /**
   * @throws LedgerException when the file is not a log, or of a version this program does not know
   */
  static void check(Connection connection, Path file) {
    try {
      long application = number(connection, "PRAGMA application_id");
      long version = number(connection, "PRAGMA user_version");
      if (application != APPLICATION) {
        throw new LedgerException(file + " is not a Witnessmark log.");
      }
      if (version > VERSION) {
        throw new LedgerException(
            file
                + " has format version "
                + version
                + "; this program knows up to "
                + VERSION
                + ". Use the newer program that wrote it.");
      }
      Shape.check(connection, file, schema());
    } catch (SQLException e) {
      throw Trouble.of("read", file, e);
    }
  }

  /** Brings the indexes of a file that another version began to what this one looks up by. */
  static void renewIndexes(Connection connection, Path file) {
    try {
      Indexes.renew(connection, schema());
    } catch (SQLException e) {
      throw Trouble.of("written", file, e);
    }
  }

  /** Writes a page as it is, within a transaction. */
  static void touch(Connection connection) throws SQLException {
    execute(connection, "PRAGMA user_version=" + VERSION);
  }

  static void execute(Connection connection, String... statements) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      for (String sql : statements) {
        statement.execute(sql);
      }
    }
  }

  static long number(Connection connection, String sql) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery(sql)) {
      return rows.next() ? rows.getLong(1) : 0;
    }
  }

  private static List<String> schema() {
    try (InputStream in = Database.class.getResourceAsStream("schema.sql")) {
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      return Arrays.stream(text.split("\n\n")).map(String::strip).toList();
    } catch (IOException e) {
      throw new IllegalStateException("schema.sql is part of the program", e);
    }
  }
}
