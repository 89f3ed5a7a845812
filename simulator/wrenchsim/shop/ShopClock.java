package wrenchsim.shop;

import java.time.Duration;
import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/** The true time: the computer's, or a simulated one that goes on only while hands work. */
public final class ShopClock {
  private final boolean simulated;
  private final Pace pace;
  private final Instant start;
  private Instant now;

  /** A clock that begins at {@code start}, or follows the computer's without one. */
  public ShopClock(Optional<Instant> start, Pace pace) {
    this.simulated = start.isPresent();
    this.start = start.orElseGet(Instant::now);
    this.now = this.start;
    this.pace = Objects.requireNonNull(pace, "pace");
  }

  /** When the run began. */
  public Instant start() {
    return start;
  }

  /** The true time now. */
  public Instant now() {
    return simulated ? now : Instant.now();
  }

  /** Lets hands work for so long. */
  public void spend(Duration work) {
    now = now.plus(work);
    if (pace == Pace.SHOP) {
      try {
        TimeUnit.NANOSECONDS.sleep(work.toNanos());
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        throw new IllegalStateException("interrupted while hands worked", e);
      }
    }
  }
}
