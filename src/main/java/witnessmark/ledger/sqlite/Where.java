package witnessmark.ledger.sqlite;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import witnessmark.ledger.Reading.Query;

/**
 * A query as an SQL condition on {@code trace t}.
 *
 * @param sql with a question mark for each value
 */
record Where(String sql, List<Object> values) {
  static Where of(Query query) {
    List<String> clauses = new ArrayList<>(List.of("1 = 1"));
    List<Object> values = new ArrayList<>();
    add(clauses, values, "t.job IN (SELECT job FROM job WHERE unit = ?)", query.unit());
    add(clauses, values, "t.job IN (SELECT job FROM job WHERE procedure = ?)", query.procedure());
    add(clauses, values, "t.job IN (SELECT job FROM job WHERE revision = ?)", query.revision());
    add(clauses, values, "t.job = ?", query.job());
    add(clauses, values, "t.fastener = ?", query.fastener());
    add(clauses, values, "t.wrench = ?", query.wrench());
    add(clauses, values, "t.operator = ?", query.operator());
    add(clauses, values, "t.station = ?", query.station());
    add(clauses, values, "t.kind = ?", query.kind());
    add(clauses, values, "t.verdict = ?", query.verdict());
    add(clauses, values, "t.at >= ?", query.from());
    add(clauses, values, "t.at < ?", query.to());
    return new Where(String.join(" AND ", clauses), values);
  }

  private static void add(
      List<String> clauses, List<Object> values, String clause, Optional<String> value) {
    if (value.isPresent()) {
      clauses.add(clause);
      values.add(value.get());
    }
  }
}
