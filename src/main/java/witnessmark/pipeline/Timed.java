package witnessmark.pipeline;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import witnessmark.entry.Timing;
import witnessmark.torque.Digits;
import witnessmark.torque.TorqueEvent;
import witnessmark.wrench.WrenchClock;

/** Finds out when a torque event happened. */
final class Timed {
  private static final Duration AHEAD = Duration.ofDays(1);
  private static final Duration BEHIND = Duration.ofDays(30);

  /** Clocks that differ by less count as agreeing. */
  private static final Duration AGREE = Duration.ofSeconds(1);

  private Timed() {}

  /**
   * When the event happened.
   *
   * <p>A wrench's clock counts unless it is plainly wrong: a day ahead of the bridge's, or thirty
   * days behind.
   *
   * @param used what is odd about the event's number
   */
  static Timing of(WrenchClock clock, TorqueEvent event, Arrival arrival, Optional<String> used) {
    Optional<Boolean> stored = arrival.stored() ? Optional.of(true) : Optional.empty();
    Instant at = arrival.at();
    Optional<Instant> time = event.time().filter(t -> believable(t, at));
    if (time.isEmpty()) {
      return new Timing(at, "bridge", Optional.empty(), Optional.empty(), stored, used);
    }
    Duration apart = clock.apart(event, at, arrival.stored());
    Duration offset = apart.abs().compareTo(AGREE) > 0 ? apart : Duration.ZERO;
    Duration underWay = Duration.between(time.get(), at).minus(apart);
    boolean late = underWay.compareTo(WrenchClock.AT_ONCE) > 0 || clock.overtook(event);
    return new Timing(
        time.get().plus(offset),
        offset.isZero() ? "wrench" : "corrected",
        offset.isZero() ? Optional.empty() : Optional.of(seconds(offset)),
        late ? Optional.of(true) : Optional.empty(),
        stored,
        used);
  }

  private static boolean believable(Instant time, Instant at) {
    return !time.isAfter(at.plus(AHEAD)) && !time.isBefore(at.minus(BEHIND));
  }

  private static Digits seconds(Duration duration) {
    return new Digits(BigDecimal.valueOf(duration.toMillis(), 3).toPlainString());
  }
}
