package witnessmark.desk;

import java.time.Instant;
import java.time.ZoneOffset;

/** Calendar intervals, in UTC. */
final class Intervals {
  private Intervals() {}

  static Instant months(Instant from, int months) {
    return from.atOffset(ZoneOffset.UTC).plusMonths(months).toInstant();
  }
}
