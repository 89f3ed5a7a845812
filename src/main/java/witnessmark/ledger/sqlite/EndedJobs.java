package witnessmark.ledger.sqlite;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Optional;

/** Finds the ended job that was open at a station at a moment. */
final class EndedJobs {
  private final PreparedStatement began;
  private final PreparedStatement left;

  /**
   * The bridge's own clock goes on while entries are made, so the newest before the moment counts.
   */
  EndedJobs(Connection c) throws SQLException {
    began =
        c.prepareStatement(
            "SELECT t.n, t.job FROM trace t JOIN job j ON j.job = t.job"
                + " WHERE t.at <= ? AND t.station = ? AND j.ended IS NOT NULL"
                + " AND t.kind IN ('job-opened', 'job-resumed')"
                + " ORDER BY t.at DESC, t.n DESC LIMIT 1");
    left =
        c.prepareStatement(
            "SELECT 1 FROM trace WHERE job = ? AND n > ? AND at <= ?"
                + " AND kind IN ('job-suspended', 'job-closed', 'job-abandoned') LIMIT 1");
  }

  Optional<String> endedJob(String station, String moment) throws SQLException {
    began.setString(1, moment);
    began.setString(2, station);
    try (ResultSet start = began.executeQuery()) {
      if (!start.next()) {
        return Optional.empty();
      }
      left.setString(1, start.getString(2));
      left.setLong(2, start.getLong(1));
      left.setString(3, moment);
      try (ResultSet end = left.executeQuery()) {
        return end.next() ? Optional.empty() : Optional.of(start.getString(2));
      }
    }
  }
}
