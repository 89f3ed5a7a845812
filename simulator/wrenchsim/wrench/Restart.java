package wrenchsim.wrench;

import java.time.Duration;
import java.time.Instant;
import java.util.Objects;
import java.util.Optional;

/**
 * A change of battery, after which a wrench counts from 1 again.
 *
 * @param every after how many events, 1 or more
 * @param jump how far its clock is set ahead by it, negative: back; absent: its clock starts at
 *     1970-01-01T00:00:00Z
 */
public record Restart(long every, Optional<Duration> jump) {

  public Restart {
    Objects.requireNonNull(jump, "jump");
    if (every < 1) {
      throw new IllegalArgumentException("a restart comes after 1 event or more, not " + every);
    }
  }

  /** What the clock shows at {@code now}, which would have shown {@code otherwise}. */
  Instant shows(Instant otherwise, Instant restarted, Instant now) {
    return jump.map(otherwise::plus)
        .orElseGet(() -> Instant.EPOCH.plus(Duration.between(restarted, now)));
  }
}
