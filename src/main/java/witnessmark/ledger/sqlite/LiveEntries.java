package witnessmark.ledger.sqlite;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import witnessmark.ledger.Stored;

/** Finds by index what the state of the shop follows from, however long the log is. */
final class LiveEntries {
  private static final String SQL =
      "SELECT e.n, e.bytes FROM entry e WHERE e.n IN (SELECT n FROM trace WHERE scope = 'shop'"
          + " UNION SELECT t.n FROM job j JOIN trace t ON t.job = j.job WHERE j.ended IS NULL)"
          + " ORDER BY e.n";

  private LiveEntries() {}

  static List<Stored> read(Connection connection) throws SQLException {
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
