package witnessmark.ledger.sqlite;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import witnessmark.ledger.Stored;

/**
 * Queries for entries, the latest ones kept prepared, for those who ask the same again and again.
 * For one thread.
 */
final class Prepared {
  private static final int MOST = 8;

  private final Connection connection;
  private final Map<String, PreparedStatement> kept = new LinkedHashMap<>(MOST, 1, true);

  Prepared(Connection connection) {
    this.connection = connection;
  }

  /** The entries that a query of {@code n, bytes} finds with those values. */
  List<Stored> stored(String sql, List<Object> values) throws SQLException {
    try {
      PreparedStatement query = of(sql);
      for (int i = 0; i < values.size(); i++) {
        query.setObject(i + 1, values.get(i));
      }
      // Closing the rows ends the query's hold on the file, though the statement stays.
      try (ResultSet rows = query.executeQuery()) {
        return read(rows);
      }
    } catch (SQLException e) {
      forget(sql);
      throw e;
    }
  }

  private static List<Stored> read(ResultSet rows) throws SQLException {
    List<Stored> found = new ArrayList<>();
    while (rows.next()) {
      found.add(new Stored(rows.getLong(1), rows.getBytes(2)));
    }
    return found;
  }

  private PreparedStatement of(String sql) throws SQLException {
    PreparedStatement known = kept.get(sql);
    if (known != null) {
      return known;
    }
    if (kept.size() == MOST) {
      forget(kept.keySet().iterator().next());
    }
    PreparedStatement made = connection.prepareStatement(sql);
    kept.put(sql, made);
    return made;
  }

  private void forget(String sql) throws SQLException {
    PreparedStatement statement = kept.remove(sql);
    if (statement != null) {
      statement.close();
    }
  }
}
