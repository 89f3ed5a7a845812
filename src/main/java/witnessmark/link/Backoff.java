package witnessmark.link;

import java.time.Duration;
import java.util.random.RandomGenerator;

/**
 * How long to wait before the next attempt: doubled after each failure, from a first to a longest
 * time, and each drawn between half and the whole of it so that many links do not knock together.
 */
public final class Backoff {
  private final Duration first;
  private final Duration longest;
  private final RandomGenerator random;
  private Duration next;

  /**
   * @throws IllegalArgumentException unless 0 &lt; first ≤ longest
   */
  public Backoff(Duration first, Duration longest, RandomGenerator random) {
    if (first.isNegative() || first.isZero() || first.compareTo(longest) > 0) {
      throw new IllegalArgumentException(
          "a backoff needs 0 < first <= longest, found " + first + " and " + longest);
    }
    this.first = first;
    this.longest = longest;
    this.random = random;
    this.next = first;
  }

  /** The time to wait after one more failure. */
  public Duration next() {
    long whole = next.toNanos();
    next = next.multipliedBy(2).compareTo(longest) > 0 ? longest : next.multipliedBy(2);
    return Duration.ofNanos(whole / 2 + random.nextLong(whole - whole / 2 + 1));
  }

  /** Begins again at the first time, after a success. */
  public void reset() {
    next = first;
  }
}
