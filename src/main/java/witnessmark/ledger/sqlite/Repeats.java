package witnessmark.ledger.sqlite;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import witnessmark.ledger.TraceRow;

/**
 * Tells whether an event is on record already.
 *
 * <p>A wrench counts upwards, so nearly every number is above all that came before: the highest of
 * each wrench is kept at hand, and the table is asked only about others.
 */
final class Repeats {
  /** Made-up serial numbers must not fill the memory. */
  private static final int KEPT = 1000;

  /** A wrench that gives every event the same number must not cost ever more. */
  private static final int KEPT_ALIKE = 100;

  private final PreparedStatement same;
  private final PreparedStatement highest;
  private final PreparedStatement numbered;
  private final Map<String, Long> highestOf = new HashMap<>();

  Repeats(Connection c) throws SQLException {
    // Left to itself, SQLite goes through all of the wrench's entries, which come in this order.
    String events =
        "SELECT e.bytes FROM trace t INDEXED BY trace_seen JOIN entry e USING (n)"
            + " WHERE t.wrench = ? AND t.number IS ? AND t.fingerprint ";
    String newest = " ORDER BY n DESC LIMIT " + KEPT_ALIKE;
    same = c.prepareStatement(events + "= ?" + newest);
    numbered = c.prepareStatement(events + "IS NOT NULL" + newest);
    highest =
        c.prepareStatement(
            "SELECT coalesce(max(number), -1) FROM trace"
                + " WHERE wrench = ? AND fingerprint IS NOT NULL");
  }

  /** The bytes of the events of that wrench with that number. */
  List<byte[]> numbered(String wrench, long number) throws SQLException {
    if (number > highestOf(wrench)) {
      return List.of();
    }
    numbered.setString(1, wrench);
    numbered.setLong(2, number);
    return bytes(numbered);
  }

  /** The same, or those without a number, with that fingerprint alone. */
  List<byte[]> same(String wrench, OptionalLong number, String fingerprint) throws SQLException {
    if (number.isPresent() && number.getAsLong() > highestOf(wrench)) {
      return List.of();
    }
    same.setString(1, wrench);
    if (number.isPresent()) {
      same.setLong(2, number.getAsLong());
    } else {
      same.setNull(2, Types.INTEGER);
    }
    same.setString(3, fingerprint);
    return bytes(same);
  }

  private static List<byte[]> bytes(PreparedStatement query) throws SQLException {
    List<byte[]> found = new ArrayList<>();
    try (ResultSet rows = query.executeQuery()) {
      while (rows.next()) {
        found.add(rows.getBytes(1));
      }
    }
    return found;
  }

  private long highestOf(String wrench) throws SQLException {
    Long known = highestOf.get(wrench);
    if (known == null) {
      highest.setString(1, wrench);
      try (ResultSet rows = highest.executeQuery()) {
        known = rows.getLong(1);
      }
      if (highestOf.size() >= KEPT) {
        highestOf.clear();
      }
      highestOf.put(wrench, known);
    }
    return known;
  }

  /** An entry was appended. Should it be taken back, a number too high only costs a query. */
  void appended(TraceRow row) {
    if (row.fingerprint() != null && row.number() != null) {
      highestOf.computeIfPresent(row.wrench(), (w, known) -> Math.max(known, row.number()));
    }
  }

  /** Others appended: what is at hand may be too low. */
  void forget() {
    highestOf.clear();
  }
}
