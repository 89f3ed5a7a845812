package witnessmark.ledger.sqlite;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Set;
import java.util.StringJoiner;

/**
 * The query for trace rows. Reading one value costs less than reading twelve, and bytes less than a
 * text; the driver fetches a column only when asked.
 */
final class TraceQuery {
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

  /** The one value that is a BLOB or NULL whatever is stored, for it is made one. */
  static final Set<Integer> BLOBS = Set.of(1 + COLUMNS.length);

  private TraceQuery() {}

  static String of(Connection connection) {
    StringJoiner text = new StringJoiner(", ", "CAST(concat_ws(char(31), ", ") AS BLOB)");
    for (String column : COLUMNS) {
      // concat_ws leaves out what is NULL
      text.add("char(30)").add(column);
    }
    return "SELECT n, "
        + String.join(", ", COLUMNS)
        + ", "
        + (strict(connection) ? text : "CASE WHEN " + typed() + " THEN " + text + " END")
        + " FROM trace NOT INDEXED ORDER BY n";
  }

  private static String typed() {
    StringJoiner typed = new StringJoiner(" AND ");
    for (String column : COLUMNS) {
      // SQLite orders numbers before texts before blobs: every text, and nothing else, lies between
      typed.add(
          column.equals("number")
              ? "typeof(number) IN ('integer', 'null')"
              : "(? IS NULL OR ? >= '' AND ? < x'')".replace("?", column));
    }
    return typed.toString();
  }

  /** Whether the table is declared to hold just those types; then integrity_check asks for them. */
  private static boolean strict(Connection connection) {
    String sql =
        "SELECT (SELECT count(*) FROM pragma_table_list('trace') WHERE schema = 'main' AND strict)"
            + " = 1 AND (SELECT count(*) FROM pragma_table_info('trace') WHERE (name = 'number'"
            + " AND type = 'INTEGER') OR (name IN ('"
            + String.join("', '", COLUMNS)
            + "') AND name <> 'number' AND type = 'TEXT')) = "
            + COLUMNS.length;
    try (Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery(sql)) {
      return rows.next() && rows.getBoolean(1);
    } catch (SQLException e) {
      // A schema too damaged to tell is as good as none; reading the rows will say so.
      return false;
    }
  }
}
