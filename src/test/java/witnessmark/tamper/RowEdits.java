package witnessmark.tamper;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;

/** Edits of rows by SQL, the triggers taken away before and put back after. */
final class RowEdits {
  private static final String[] TRACE = {
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
  private static final String[] JOB = {
    "job", "unit", "procedure", "revision", "station", "status", "opened", "ended"
  };

  private RowEdits() {}

  static List<Kind> all() {
    return List.of(
        Kind.of("entry: a byte", 3, (c, r) -> blob(c, "entry", "bytes", n(c, r), r)),
        Kind.of("entry: a digit of a torque", 3, RowEdits::torque),
        Kind.of("entry: its link", 2, (c, r) -> blob(c, "entry", "link", n(c, r), r)),
        Kind.of("entry: removed, with its trace row", 2, RowEdits::removed),
        Kind.of("entry: one inserted, the others moved up", 2, RowEdits::inserted),
        Kind.of("entry: two exchanged, with their trace rows", 2, RowEdits::exchanged),
        Kind.of("entry: appended, with link and trace row", 2, RowEdits::appended),
        Kind.of("entry: the end cut off, with what follows from it", 2, RowEdits::cutOff),
        Kind.of("checkpoint: a character", 2, RowEdits::note),
        Kind.of("tile: a byte", 1, (c, r) -> blob(c, "tile", "hash", -1, r)),
        Kind.of("tile: removed, or one added", 1, RowEdits::tile),
        Kind.of("trace: a cell", 3, RowEdits::trace),
        Kind.of("trace: a row removed, or one added", 1, RowEdits::traceRow),
        Kind.of("job: a cell", 2, RowEdits::job),
        Kind.of("job: a row removed, or one added", 1, RowEdits::jobRow),
        Kind.of("cursor (no part of the record)", 2, RowEdits::cursor));
  }

  static long size(Copy copy) {
    return ((Number) copy.ask("SELECT count(*) FROM entry").get(0)).longValue();
  }

  private static long n(Copy copy, Random random) {
    return random.nextInt((int) size(copy));
  }

  private static void blob(Copy copy, String table, String column, long n, Random random) {
    String where = n < 0 ? " WHERE level = 1 AND idx = 0" : " WHERE n = " + n;
    byte[] bytes = (byte[]) copy.ask("SELECT " + column + " FROM " + table + where).get(0);
    bytes[random.nextInt(bytes.length)] ^= (byte) (1 + random.nextInt(255));
    copy.disarmed("UPDATE " + table + " SET " + column + " = x'" + hex(bytes) + "'" + where);
  }

  private static String hex(byte[] bytes) {
    return java.util.HexFormat.of().formatHex(bytes);
  }

  private static void torque(Copy copy, Random random) {
    List<Object> readings = copy.ask("SELECT n FROM trace WHERE kind = 'torque'");
    Object n = readings.get(random.nextInt(readings.size()));
    byte[] bytes = (byte[]) copy.ask("SELECT bytes FROM entry WHERE n = " + n).get(0);
    String text = new String(bytes, StandardCharsets.UTF_8);
    int at = text.indexOf("\"torque\":\"") + 10;
    char other = (char) ('0' + (text.charAt(at) - '0' + 1 + random.nextInt(9)) % 10);
    String changed = text.substring(0, at) + other + text.substring(at + 1);
    copy.disarmed(
        "UPDATE entry SET bytes = x'"
            + hex(changed.getBytes(StandardCharsets.UTF_8))
            + "' WHERE n = "
            + n);
  }

  private static void removed(Copy copy, Random random) {
    long n = n(copy, random);
    boolean close = random.nextBoolean();
    copy.disarmed(
        "DELETE FROM entry WHERE n = " + n,
        "DELETE FROM trace WHERE n = " + n,
        close ? "UPDATE entry SET n = n - 1 WHERE n > " + n : "SELECT 1",
        close ? "UPDATE trace SET n = n - 1 WHERE n > " + n : "SELECT 1");
  }

  private static void inserted(Copy copy, Random random) {
    long n = n(copy, random);
    for (String table : List.of("entry", "trace")) {
      // by way of negative numbers, since each row is moved on its own
      copy.disarmed(
          "UPDATE " + table + " SET n = -n - 2 WHERE n >= " + n,
          "UPDATE " + table + " SET n = -n - 1 WHERE n < 0");
    }
    copy.disarmed(
        "INSERT INTO entry SELECT " + n + ", bytes, link FROM entry WHERE n = " + (n + 1),
        "INSERT INTO trace SELECT "
            + n
            + ", "
            + String.join(", ", TRACE)
            + " FROM trace WHERE n = "
            + (n + 1));
  }

  private static void exchanged(Copy copy, Random random) {
    long one = n(copy, random);
    long other = (one + 1 + random.nextInt((int) size(copy) - 1)) % size(copy);
    for (String table : List.of("entry", "trace")) {
      copy.disarmed(
          "UPDATE " + table + " SET n = -1 WHERE n = " + one,
          "UPDATE " + table + " SET n = " + one + " WHERE n = " + other,
          "UPDATE " + table + " SET n = " + other + " WHERE n = -1");
    }
  }

  private static void appended(Copy copy, Random random) {
    long size = size(copy);
    long from = n(copy, random);
    byte[] bytes = (byte[]) copy.ask("SELECT bytes FROM entry WHERE n = " + from).get(0);
    byte[] before = (byte[]) copy.ask("SELECT link FROM entry WHERE n = " + (size - 1)).get(0);
    copy.disarmed(
        "INSERT INTO entry VALUES ("
            + size
            + ", x'"
            + hex(bytes)
            + "', x'"
            + hex(Links.after(before, bytes))
            + "')",
        "INSERT INTO trace SELECT "
            + size
            + ", "
            + String.join(", ", TRACE)
            + " FROM trace WHERE n = "
            + from);
  }

  private static void cutOff(Copy copy, Random random) {
    long from = 1 + random.nextInt((int) size(copy) - 1);
    copy.disarmed(
        "DELETE FROM entry WHERE n >= " + from,
        "DELETE FROM trace WHERE n >= " + from,
        "DELETE FROM job WHERE opened >= " + from,
        "UPDATE job SET ended = NULL, status = 'open' WHERE ended >= " + from,
        "DELETE FROM tile WHERE (idx + 1) * 256 > " + from);
  }

  private static void note(Copy copy, Random random) {
    String note = (String) copy.ask("SELECT note FROM checkpoint").get(0);
    int at = random.nextInt(note.length());
    char other = (char) (note.charAt(at) ^ 1 + random.nextInt(15));
    copy.put(
        "UPDATE checkpoint SET note = ?", note.substring(0, at) + other + note.substring(at + 1));
  }

  private static void tile(Copy copy, Random random) {
    copy.disarmed(
        random.nextBoolean()
            ? "DELETE FROM tile"
            : "INSERT INTO tile VALUES (" + (1 + random.nextInt(3)) + ", 7, zeroblob(32))");
  }

  private static void trace(Copy copy, Random random) {
    cell(copy, "trace", TRACE[random.nextInt(TRACE.length)], "n = " + n(copy, random), random);
  }

  private static void job(Copy copy, Random random) {
    List<Object> jobs = copy.ask("SELECT job FROM job");
    Object job = jobs.get(random.nextInt(jobs.size()));
    cell(copy, "job", JOB[random.nextInt(JOB.length)], "job = '" + job + "'", random);
  }

  private static void cell(Copy copy, String table, String column, String where, Random random) {
    boolean number = List.of("number", "opened", "ended").contains(column);
    String other = number ? Integer.toString(10_000 + random.nextInt(1000)) : "'other'";
    copy.disarmed("UPDATE " + table + " SET " + column + " = " + other + " WHERE " + where);
  }

  private static void traceRow(Copy copy, Random random) {
    copy.disarmed(
        random.nextBoolean()
            ? "DELETE FROM trace WHERE n = " + n(copy, random)
            : "INSERT INTO trace (n, kind, at, scope) VALUES (100000, 'torque', 'now', 'none')");
  }

  private static void jobRow(Copy copy, Random random) {
    copy.disarmed(
        random.nextBoolean()
            ? "DELETE FROM job WHERE opened = (SELECT min(opened) FROM job)"
            : "INSERT INTO job VALUES ('J-9', 'u', 'p', 'A', 's', 'open', 9, NULL)");
  }

  private static void cursor(Copy copy, Random random) {
    copy.disarmed(
        random.nextBoolean()
            ? "DELETE FROM cursor"
            : "INSERT OR REPLACE INTO cursor VALUES ('shop', " + random.nextInt(1000) + ")");
  }
}
