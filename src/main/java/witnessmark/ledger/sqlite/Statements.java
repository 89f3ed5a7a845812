package witnessmark.ledger.sqlite;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import witnessmark.ledger.Draft;
import witnessmark.ledger.JobChange;
import witnessmark.ledger.LedgerException;
import witnessmark.ledger.Stored;
import witnessmark.ledger.TraceRow;

/** The prepared statements of an appending connection. */
final class Statements {
  private final PreparedStatement from;
  private final PreparedStatement one;
  private final PreparedStatement newest;
  private final PreparedStatement end;
  private final PreparedStatement readNote;
  private final PreparedStatement writeNote;
  private final PreparedStatement entry;
  private final PreparedStatement trace;
  private final PreparedStatement tile;
  private final PreparedStatement opened;
  private final PreparedStatement moved;

  Statements(Connection c) throws SQLException {
    from = c.prepareStatement("SELECT n, bytes FROM entry WHERE n >= ? ORDER BY n");
    one = c.prepareStatement("SELECT n, bytes FROM entry WHERE n = ?");
    newest =
        c.prepareStatement(
            "SELECT e.n, e.bytes FROM trace t JOIN entry e ON e.n = t.n"
                + " WHERE t.n >= ? AND t.kind = ? AND t.station = ? ORDER BY t.n DESC LIMIT 1");
    end = c.prepareStatement("SELECT coalesce(max(n) + 1, 0) FROM entry");
    readNote = c.prepareStatement("SELECT note FROM checkpoint WHERE id = 0");
    writeNote =
        c.prepareStatement(
            "INSERT INTO checkpoint (id, note) VALUES (0, ?)"
                + " ON CONFLICT (id) DO UPDATE SET note = excluded.note");
    entry = c.prepareStatement("INSERT INTO entry (n, bytes, link) VALUES (?, ?, ?)");
    trace = c.prepareStatement("INSERT INTO trace VALUES (?,?,?,?,?,?,?,?,?,?,?,?,?)");
    tile = c.prepareStatement("INSERT INTO tile (level, idx, hash) VALUES (?, ?, ?)");
    opened = c.prepareStatement("INSERT INTO job VALUES (?, ?, ?, ?, ?, 'open', ?, NULL)");
    moved =
        c.prepareStatement(
            "UPDATE job SET status = ?, station = coalesce(?, station), ended = ? WHERE job = ?");
  }

  List<Stored> from(long n) throws SQLException {
    from.setLong(1, n);
    return stored(from);
  }

  Optional<Stored> one(long n) throws SQLException {
    one.setLong(1, n);
    return stored(one).stream().findFirst();
  }

  Optional<Stored> newest(String kind, String station, long from) throws SQLException {
    newest.setLong(1, from);
    newest.setString(2, kind);
    newest.setString(3, station);
    return stored(newest).stream().findFirst();
  }

  /** One more than the last entry's number. */
  long end() throws SQLException {
    try (ResultSet rows = end.executeQuery()) {
      return rows.getLong(1);
    }
  }

  String checkpoint() throws SQLException {
    try (ResultSet rows = readNote.executeQuery()) {
      return rows.next() ? rows.getString(1) : null;
    }
  }

  boolean checkpointIs(String note) throws SQLException {
    return Objects.equals(note, checkpoint());
  }

  void checkpoint(String note) throws SQLException {
    writeNote.setString(1, note);
    writeNote.executeUpdate();
  }

  void tile(int level, long index, byte[] hash) {
    try {
      tile.setInt(1, level);
      tile.setLong(2, index);
      tile.setBytes(3, hash);
      tile.executeUpdate();
    } catch (SQLException e) {
      throw new LedgerException("A tile of the tree cannot be written: " + e.getMessage(), e);
    }
  }

  void entry(long n, Draft draft, byte[] link) throws SQLException {
    entry.setLong(1, n);
    entry.setBytes(2, draft.bytes());
    entry.setBytes(3, link);
    entry.executeUpdate();
    trace(n, draft.trace());
    if (draft.job().isPresent()) {
      job(n, draft.job().get());
    }
  }

  private void trace(long n, TraceRow row) throws SQLException {
    trace.setLong(1, n);
    trace.setString(2, row.kind());
    trace.setString(3, row.at());
    trace.setString(4, row.scope());
    trace.setString(5, row.job());
    trace.setString(6, row.station());
    trace.setString(7, row.fastener());
    trace.setString(8, row.wrench());
    setNumber(trace, 9, row.number());
    trace.setString(10, row.operator());
    trace.setString(11, row.verdict());
    trace.setString(12, row.effect());
    trace.setString(13, row.fingerprint());
    trace.executeUpdate();
  }

  private void job(long n, JobChange change) throws SQLException {
    if (change instanceof JobChange.Opened o) {
      opened.setString(1, o.job());
      opened.setString(2, o.unit());
      opened.setString(3, o.procedure());
      opened.setString(4, o.revision());
      opened.setString(5, o.station());
      opened.setLong(6, n);
      opened.executeUpdate();
    } else if (change instanceof JobChange.Moved m) {
      moved.setString(1, m.status());
      moved.setString(2, m.station());
      setNumber(moved, 3, m.ends() ? n : null);
      moved.setString(4, m.job());
      moved.executeUpdate();
    } else {
      throw new IllegalStateException("no row for " + change.getClass());
    }
  }

  private static void setNumber(PreparedStatement statement, int at, Long value)
      throws SQLException {
    if (value == null) {
      statement.setNull(at, Types.INTEGER);
    } else {
      statement.setLong(at, value);
    }
  }

  private static List<Stored> stored(PreparedStatement query) throws SQLException {
    List<Stored> found = new ArrayList<>();
    try (ResultSet rows = query.executeQuery()) {
      while (rows.next()) {
        found.add(new Stored(rows.getLong(1), rows.getBytes(2)));
      }
    }
    return found;
  }
}
