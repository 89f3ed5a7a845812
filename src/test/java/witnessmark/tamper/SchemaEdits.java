package witnessmark.tamper;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Random;

/** Edits of what the file is made of, by SQL; the rows themselves stay as they are. */
final class SchemaEdits {
  private static final List<String> TABLES = List.of("entry", "checkpoint", "tile", "trace", "job");
  private static final List<String> TRIGGERS =
      List.of("entry_goes_on", "entry_stays", "entry_remains");
  private static final List<String> INDEXES =
      List.of("trace_job", "trace_shop", "trace_wrench", "trace_seen", "trace_at", "job_unit");
  private static final List<String> EXTRA =
      List.of(
          "CREATE TABLE note (text TEXT)",
          "CREATE VIEW shown AS SELECT * FROM trace",
          "CREATE INDEX trace_effect ON trace (effect)",
          "CREATE TRIGGER quiet AFTER INSERT ON trace BEGIN UPDATE trace SET verdict = 'accepted'"
              + " WHERE n = NEW.n; END",
          "ALTER TABLE trace ADD COLUMN more TEXT");

  private SchemaEdits() {}

  static List<Kind> all() {
    return List.of(
        Kind.of("schema: a view of the same rows in a table's place", 2, SchemaEdits::view),
        Kind.of("schema: a trigger removed, or made to do nothing", 2, SchemaEdits::trigger),
        Kind.of("schema: an index removed, or over part of its rows", 2, SchemaEdits::index),
        Kind.of(
            "schema: a table, view, index, trigger or column added",
            2,
            (c, r) -> run(c, one(EXTRA, r))));
  }

  /** Leaves out what it likes for half of every minute, too late for whoever looks now. */
  private static void view(Copy copy, Random random) {
    String table = one(TABLES, random);
    run(
        copy,
        "ALTER TABLE " + table + " RENAME TO t2",
        "CREATE VIEW "
            + table
            + " AS SELECT * FROM t2 WHERE strftime('%S', 'now') < '30' OR strftime('%S') >= '30'");
  }

  private static void trigger(Copy copy, Random random) {
    String name = one(TRIGGERS, random);
    run(copy, "DROP TRIGGER " + name);
    if (random.nextBoolean()) {
      run(copy, "CREATE TRIGGER " + name + " BEFORE UPDATE ON entry BEGIN SELECT 1; END");
    }
  }

  private static void index(Copy copy, Random random) {
    String name = one(INDEXES, random);
    run(copy, "DROP INDEX " + name);
    if (random.nextBoolean()) {
      String on =
          name.startsWith("job") ? "job (unit, opened) WHERE ended > 9" : "trace (n) WHERE n > 99";
      run(copy, "CREATE INDEX " + name + " ON " + on);
    }
  }

  private static String one(List<String> all, Random random) {
    return all.get(random.nextInt(all.size()));
  }

  private static void run(Copy copy, String... statements) {
    try (Connection db = copy.connect();
        Statement s = db.createStatement()) {
      for (String sql : statements) {
        s.execute(sql);
      }
    } catch (SQLException e) {
      throw new IllegalStateException(String.join("; ", statements), e);
    }
  }
}
