package witnessmark.link.mqtt;

import java.time.Duration;

/**
 * How long a broker has answered no publish. A connection can be dead without the socket knowing,
 * and the library notices that only after more than twice the keep-alive. For one thread.
 */
final class Silence {
  /** As long as the keep-alive. */
  private static final Duration LIMIT = Duration.ofSeconds(15);

  private final Duration patience;
  private boolean silent;
  private long since;

  /**
   * @param patience how long each answer was waited for
   */
  Silence(Duration patience) {
    this.patience = patience;
  }

  /** An answer came, or none did; whether it has been too long since one came. */
  boolean tooLong(boolean answered, long nanoTime) {
    if (!answered && !silent) {
      since = nanoTime - patience.toNanos();
    }
    silent = !answered;
    return silent && nanoTime - since > LIMIT.toNanos();
  }
}
