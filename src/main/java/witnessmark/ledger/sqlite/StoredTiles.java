package witnessmark.ledger.sqlite;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;

/** Reads neighbouring tiles of a level. */
final class StoredTiles {
  private static final String SQL =
      "SELECT idx, hash FROM tile WHERE level = ? AND idx >= ? AND idx < ? ORDER BY idx";

  private StoredTiles() {}

  /** Those from {@code index} on without a gap, {@code limit} at most. */
  static List<byte[]> read(Connection connection, int level, long index, int limit)
      throws SQLException {
    List<byte[]> found = new ArrayList<>();
    try (PreparedStatement query = connection.prepareStatement(SQL)) {
      query.setInt(1, level);
      query.setLong(2, index);
      query.setLong(3, index + limit);
      try (ResultSet rows = query.executeQuery()) {
        while (rows.next() && rows.getLong(1) == index + found.size()) {
          found.add(rows.getBytes(2));
        }
      }
    }
    return found;
  }
}
