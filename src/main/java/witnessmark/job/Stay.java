package witnessmark.job;

import java.time.Instant;
import java.util.Objects;
import java.util.Optional;

/**
 * A time for which a job was open at a station.
 *
 * @param from its first moment
 * @param to the first moment after it; empty while it lasts
 */
public record Stay(String station, Instant from, Optional<Instant> to) {
  public Stay {
    Objects.requireNonNull(station, "station");
    Objects.requireNonNull(from, "from");
    Objects.requireNonNull(to, "to");
  }

  boolean covers(String where, Instant moment) {
    return station.equals(where)
        && !moment.isBefore(from)
        && to.filter(end -> !moment.isBefore(end)).isEmpty();
  }
}
