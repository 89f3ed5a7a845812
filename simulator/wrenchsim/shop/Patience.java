package wrenchsim.shop;

import java.time.Duration;
import java.util.Objects;

/**
 * How long a person waits for a bridge.
 *
 * @param idleAfter after how long without a message the person goes home
 * @param verdictWithin how long a verdict takes at most before the person wonders
 */
public record Patience(Duration idleAfter, Duration verdictWithin) {
  public Patience {
    Objects.requireNonNull(idleAfter, "idleAfter");
    Objects.requireNonNull(verdictWithin, "verdictWithin");
  }
}
