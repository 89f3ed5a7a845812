package witnessmark.wrench;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalLong;
import witnessmark.torque.TorqueEvent;

/**
 * What a wrench's readings tell of its clock and its counter.
 *
 * <p>A reading comes after it happened. So the smallest lag of the bridge's clock behind the
 * wrench's, among readings that came one by one, is how far the two clocks are apart, as long as
 * one of them came at once. Readings of a stored burst may all be late and tell only when their lag
 * is smaller still.
 *
 * @param number the newest event number
 * @param time the newest time by the wrench's clock
 * @param lags seconds from the wrench's time to the bridge's, of the last readings that tell
 */
public record WrenchClock(OptionalLong number, Optional<Instant> time, List<Duration> lags) {
  /** Nothing is known. */
  public static final WrenchClock UNKNOWN =
      new WrenchClock(OptionalLong.empty(), Optional.empty(), List.of());

  /**
   * How long a reading may be under way and still count as come at once: common practice, no
   * source.
   */
  public static final Duration AT_ONCE = Duration.ofSeconds(15);

  private static final int REMEMBERED = 20;

  public WrenchClock {
    Objects.requireNonNull(number, "number");
    Objects.requireNonNull(time, "time");
    lags = List.copyOf(lags);
  }

  /**
   * How far the bridge's clock is ahead of the wrench's, as far as this reading and those before it
   * tell.
   */
  public Duration apart(TorqueEvent event, Instant at, boolean stored) {
    Duration lag = Duration.between(event.time().orElseThrow(), at);
    Optional<Duration> least = jumped(event) ? Optional.empty() : least();
    if (least.isEmpty()) {
      return stored && !lag.isNegative() ? Duration.ZERO : lag;
    }
    return lag.compareTo(least.get()) < 0 ? lag : least.get();
  }

  /** Whether the wrench has told of something later than this reading. */
  public boolean overtook(TorqueEvent event) {
    return !jumped(event)
        && time.isPresent()
        && event.time().filter(t -> t.isBefore(time.get())).isPresent();
  }

  /** Whether the counter goes on from a lower number though time went on. */
  public boolean beganAnew(TorqueEvent event) {
    return number.isPresent()
        && event.number().isPresent()
        && event.number().getAsLong() < number.getAsLong()
        && !overtook(event);
  }

  /** Whether the reading does not go on from the newest number. */
  public boolean notCountedOn(TorqueEvent event) {
    return number.isPresent()
        && event.number().isPresent()
        && event.number().getAsLong() <= number.getAsLong();
  }

  /** The counter went on and the time went back: somebody set the clock. */
  private boolean jumped(TorqueEvent event) {
    return number.isPresent()
        && event.number().isPresent()
        && event.number().getAsLong() > number.getAsLong()
        && time.isPresent()
        && event.time().filter(t -> t.isBefore(time.get().minus(AT_ONCE))).isPresent();
  }

  private Optional<Duration> least() {
    return lags.stream().min(Duration::compareTo);
  }

  /** What is known after a reading that has a time. */
  public WrenchClock heard(TorqueEvent event, Instant at, boolean stored) {
    boolean jumped = jumped(event);
    List<Duration> kept = new ArrayList<>(jumped ? List.of() : lags);
    Duration lag = Duration.between(event.time().orElseThrow(), at);
    boolean smaller = kept.stream().allMatch(l -> lag.compareTo(l) < 0);
    if (!stored || (smaller && (!kept.isEmpty() || lag.isNegative()))) {
      kept.add(lag);
    }
    if (kept.size() > REMEMBERED) {
      kept.remove(0);
    }
    boolean newer = jumped || !overtook(event);
    return new WrenchClock(
        newer && event.number().isPresent() ? event.number() : number,
        newer ? event.time() : time,
        kept);
  }
}
