package witnessmark.ledger.sqlite;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import witnessmark.ledger.LedgerException;

/**
 * Whether the file's tables are tables and nothing hooks into them. A view in a table's place shows
 * what it likes, and a trigger changes what is appended; {@code ledger verify} looks at all of it.
 */
final class Shape {
  private Shape() {}

  /**
   * @param schema the statements that make a log
   * @throws LedgerException when there is a view, a virtual table, or a trigger that no log has
   */
  static void check(Connection connection, Path file, List<String> schema) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet rows =
            statement.executeQuery(
                "SELECT type, name, sql FROM sqlite_schema WHERE type NOT IN ('table', 'index')"
                    + " OR sql LIKE 'CREATE V%'"
                    // a view takes the triggers of the table it stands for along: it is named
                    + " ORDER BY type DESC")) {
      while (rows.next()) {
        String sql = rows.getString(3);
        if (!"trigger".equals(rows.getString(1)) || !schema.contains(sql + ";")) {
          throw foreign(file, rows.getString(1) + " " + rows.getString(2));
        }
      }
    }
  }

  private static LedgerException foreign(Path file, String what) {
    return new LedgerException(
        "The log "
            + file
            + " holds the "
            + what.replaceAll("\\p{Cntrl}", "?")
            + ", which no log has: somebody changed the file, and nothing it shows can be relied on."
            + " Keep it as it is, see what is wrong with witnessmark ledger verify, then move its"
            + " directory aside and put a backup in its place with witnessmark ledger restore.");
  }
}
