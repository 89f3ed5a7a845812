package witnessmark.ledger.sqlite;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import witnessmark.ledger.Live;
import witnessmark.ledger.Stored;

/** Finds by index what the state of the shop follows from, however long the log is. */
final class LiveEntries {
  private static final String SQL =
      "SELECT e.n, e.bytes FROM entry e WHERE e.n IN (SELECT n FROM trace WHERE scope = 'shop'"
          + " UNION SELECT t.n FROM job j JOIN trace t ON t.job = j.job WHERE j.ended IS NULL)"
          + " ORDER BY e.n";

  private static final String READINGS =
      "SELECT c.wrench, (SELECT count(*) FROM trace t WHERE t.wrench = c.wrench"
          + " AND t.kind = 'torque' AND t.n > c.n) FROM (SELECT wrench, max(n) AS n FROM trace"
          + " WHERE scope = 'shop' AND kind = 'wrench-calibrated' GROUP BY wrench) c";

  private LiveEntries() {}

  /** What the state of the shop follows from, in a log of that size, within one transaction. */
  static Live read(Connection connection, long size) throws SQLException {
    return new Live(size, entries(connection), readings(connection));
  }

  private static Map<String, Long> readings(Connection connection) throws SQLException {
    Map<String, Long> found = new TreeMap<>();
    try (PreparedStatement query = connection.prepareStatement(READINGS);
        ResultSet rows = query.executeQuery()) {
      while (rows.next()) {
        found.put(rows.getString(1), rows.getLong(2));
      }
    }
    return found;
  }

  private static List<Stored> entries(Connection connection) throws SQLException {
    List<Stored> found = new ArrayList<>();
    try (PreparedStatement query = connection.prepareStatement(SQL);
        ResultSet rows = query.executeQuery()) {
      while (rows.next()) {
        found.add(new Stored(rows.getLong(1), rows.getBytes(2)));
      }
    }
    return found;
  }
}
