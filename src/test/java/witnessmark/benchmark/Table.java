package witnessmark.benchmark;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import org.sqlite.SQLiteConfig;

/** The least that keeps readings: one table of their bytes, synced at every commit. */
final class Table implements AutoCloseable {
  private final Connection connection;
  private final Statement control;
  private final PreparedStatement insert;

  Table(Path file) {
    try {
      SQLiteConfig config = new SQLiteConfig();
      config.setGetGeneratedKeys(false);
      connection = DriverManager.getConnection("jdbc:sqlite:" + file, config.toProperties());
      control = connection.createStatement();
      control.execute("PRAGMA journal_mode=WAL");
      control.execute("PRAGMA synchronous=FULL");
      control.execute("CREATE TABLE reading (n INTEGER PRIMARY KEY, bytes BLOB NOT NULL)");
      insert = connection.prepareStatement("INSERT INTO reading (bytes) VALUES (?)");
    } catch (SQLException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Puts all of them on disk in one transaction. */
  void commit(List<byte[]> readings) {
    try {
      control.execute("BEGIN IMMEDIATE");
      for (byte[] reading : readings) {
        insert.setBytes(1, reading);
        insert.executeUpdate();
      }
      control.execute("COMMIT");
    } catch (SQLException e) {
      throw new IllegalStateException(e);
    }
  }

  @Override
  public void close() {
    try {
      connection.close();
    } catch (SQLException e) {
      throw new IllegalStateException(e);
    }
  }
}
