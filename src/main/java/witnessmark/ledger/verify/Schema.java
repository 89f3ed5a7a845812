package witnessmark.ledger.verify;

import java.util.List;
import java.util.Map;
import java.util.Set;

/** The objects that a ledger file is made of, as docs/ledger-format.md publishes them. */
final class Schema {
  /** The statements, in the order of the page. */
  static final List<String> STATEMENTS =
      List.of(
          "CREATE TABLE entry (n INTEGER PRIMARY KEY, bytes BLOB NOT NULL, link BLOB NOT NULL)"
              + " STRICT",
          "CREATE TABLE checkpoint (id INTEGER PRIMARY KEY CHECK (id = 0), note TEXT NOT NULL)"
              + " STRICT",
          "CREATE TABLE tile (level INTEGER NOT NULL, idx INTEGER NOT NULL, hash BLOB NOT NULL,"
              + " PRIMARY KEY (level, idx)) STRICT, WITHOUT ROWID",
          "CREATE TABLE trace (n INTEGER PRIMARY KEY, kind TEXT NOT NULL, at TEXT NOT NULL,"
              + " scope TEXT NOT NULL, job TEXT, station TEXT, fastener TEXT, wrench TEXT,"
              + " number INTEGER, operator TEXT, verdict TEXT, effect TEXT, fingerprint TEXT)"
              + " STRICT",
          "CREATE TABLE job (job TEXT PRIMARY KEY, unit TEXT NOT NULL, procedure TEXT NOT NULL,"
              + " revision TEXT NOT NULL, station TEXT NOT NULL, status TEXT NOT NULL,"
              + " opened INTEGER NOT NULL, ended INTEGER) STRICT, WITHOUT ROWID",
          "CREATE TABLE cursor (name TEXT PRIMARY KEY, n INTEGER NOT NULL) STRICT, WITHOUT ROWID",
          "CREATE INDEX trace_job ON trace (job, n) WHERE job IS NOT NULL",
          "CREATE INDEX trace_shop ON trace (n) WHERE scope = 'shop'",
          "CREATE INDEX trace_wrench ON trace (wrench, n) WHERE wrench IS NOT NULL",
          "CREATE INDEX trace_seen ON trace (wrench, number, fingerprint)"
              + " WHERE fingerprint IS NOT NULL",
          "CREATE INDEX trace_at ON trace (at, n)",
          "CREATE INDEX job_unit ON job (unit, opened)",
          "CREATE INDEX job_unfinished ON job (status) WHERE ended IS NULL",
          "CREATE TRIGGER entry_goes_on BEFORE INSERT ON entry WHEN NEW.n IS NOT"
              + " (SELECT coalesce(max(n) + 1, 0) FROM entry)"
              + " BEGIN SELECT RAISE(ABORT, 'the log only goes on at its end'); END",
          "CREATE TRIGGER entry_stays BEFORE UPDATE ON entry"
              + " BEGIN SELECT RAISE(ABORT, 'the log never changes'); END",
          "CREATE TRIGGER entry_remains BEFORE DELETE ON entry"
              + " BEGIN SELECT RAISE(ABORT, 'the log never forgets'); END");

  /** Indexes as earlier versions of the program made them; the next writer makes them anew. */
  static final Map<String, Set<String>> EARLIER =
      Map.of(
          "trace_seen",
          Set.of(
              "CREATE INDEX trace_seen ON trace (wrench, fingerprint)"
                  + " WHERE fingerprint IS NOT NULL"));

  private Schema() {}

  /** {@code table entry} of its statement. */
  static String name(String statement) {
    String[] words = statement.split(" ", 4);
    return words[1].toLowerCase(java.util.Locale.ROOT) + " " + words[2];
  }
}
