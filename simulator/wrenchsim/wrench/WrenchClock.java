package wrenchsim.wrench;

import java.time.Duration;
import java.time.Instant;
import java.util.Objects;

/**
 * A wrench's own idea of the time.
 *
 * @param offset how far it was ahead when the run began; negative when behind
 * @param driftPpm how much it gains since then, in parts per million (86 400 s a day: 11.6 ppm is a
 *     second a day); within ±100 000
 */
public record WrenchClock(Duration offset, double driftPpm) {

  /** A clock that is right and stays so. */
  public static final WrenchClock RIGHT = new WrenchClock(Duration.ZERO, 0);

  public WrenchClock {
    Objects.requireNonNull(offset, "offset");
    if (!(Math.abs(driftPpm) <= 100_000)) {
      throw new IllegalArgumentException(
          "the drift must lie within 100000 ppm either way, but is " + driftPpm);
    }
  }

  /** What it shows at {@code now} in a run that began at {@code start}. */
  public Instant at(Instant now, Instant start) {
    double gainedMillis = Duration.between(start, now).toMillis() * driftPpm / 1e6;
    return now.plus(offset).plusMillis(Math.round(gainedMillis));
  }
}
