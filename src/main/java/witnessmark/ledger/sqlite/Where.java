package witnessmark.ledger.sqlite;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import witnessmark.ledger.Reading.Query;

/**
 * A query as an SQL condition on {@code trace t}, to be read in the order of {@code t.n}.
 *
 * <p>A part that may match most of the log must not choose the way through it, or its matches would
 * be sorted anew for every chunk: a procedure's jobs are asked after row by row, and a period is
 * first turned into numbers ({@link #period}).
 *
 * @param sql with a question mark for each value
 */
record Where(String sql, List<Object> values) {
  static Where of(Query query) {
    List<String> clauses = new ArrayList<>(List.of("1 = 1"));
    List<Object> values = new ArrayList<>();
    add(clauses, values, "t.job IN (SELECT job FROM job WHERE unit = ?)", query.unit());
    add(clauses, values, jobWith("procedure"), query.procedure());
    add(clauses, values, jobWith("revision"), query.revision());
    add(clauses, values, "t.job = ?", query.job());
    add(clauses, values, "t.fastener = ?", query.fastener());
    add(clauses, values, "t.wrench = ?", query.wrench());
    add(clauses, values, "t.operator = ?", query.operator());
    add(clauses, values, "t.station = ?", query.station());
    add(clauses, values, "t.kind = ?", query.kind());
    add(clauses, values, "t.verdict = ?", query.verdict());
    add(clauses, values, "+t.at >= ?", query.from());
    add(clauses, values, "+t.at < ?", query.to());
    return new Where(String.join(" AND ", clauses), values);
  }

  /** The least and the greatest number taken in the query's period; none where it has none. */
  static Optional<Where> period(Query query) {
    List<String> clauses = new ArrayList<>();
    List<Object> values = new ArrayList<>();
    add(clauses, values, "at >= ?", query.from());
    add(clauses, values, "at < ?", query.to());
    return clauses.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Where(
                "SELECT min(n), max(n) FROM trace WHERE " + String.join(" AND ", clauses), values));
  }

  private static String jobWith(String column) {
    return "EXISTS (SELECT 1 FROM job j WHERE j.job = t.job AND j." + column + " = ?)";
  }

  private static void add(
      List<String> clauses, List<Object> values, String clause, Optional<String> value) {
    if (value.isPresent()) {
      clauses.add(clause);
      values.add(value.get());
    }
  }
}
