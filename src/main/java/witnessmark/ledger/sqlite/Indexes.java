package witnessmark.ledger.sqlite;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;

/**
 * The indexes as this version looks things up. They are no part of the format: a file that another
 * version began is read without them, only slowly.
 */
final class Indexes {
  private static final String MAKING = "CREATE INDEX ";

  private Indexes() {}

  /** Makes anew those that another version made otherwise, all or nothing. */
  static void renew(Connection connection, List<String> schema) throws SQLException {
    if (stale(connection, schema).isEmpty()) {
      return;
    }
    Database.execute(connection, "BEGIN IMMEDIATE");
    try {
      // asked again: another process may have been quicker
      for (String index : stale(connection, schema)) {
        Database.execute(connection, "DROP INDEX IF EXISTS " + name(index), index);
      }
      Database.execute(connection, "COMMIT");
    } catch (SQLException e) {
      Database.execute(connection, "ROLLBACK");
      throw e;
    }
  }

  private static List<String> stale(Connection connection, List<String> schema)
      throws SQLException {
    List<String> stale = new ArrayList<>();
    try (PreparedStatement made =
        connection.prepareStatement(
            "SELECT 1 FROM sqlite_schema WHERE type = 'index' AND name = ? AND sql = ?")) {
      for (String statement : schema) {
        if (statement.startsWith(MAKING) && !stands(made, statement)) {
          stale.add(statement);
        }
      }
    }
    return stale;
  }

  private static boolean stands(PreparedStatement made, String statement) throws SQLException {
    made.setString(1, name(statement));
    made.setString(2, statement.replaceFirst(";$", ""));
    try (ResultSet rows = made.executeQuery()) {
      return rows.next();
    }
  }

  private static String name(String statement) {
    return statement.substring(MAKING.length(), statement.indexOf(" ON "));
  }
}
