package wrenchsim.wrench;

import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import java.util.Random;
import wrenchsim.joint.Joint;
import wrenchsim.joint.Turn;

/** A wrench in use: it turns joints and numbers what it measured. */
public final class Wrench {
  private static final double WEAR_EVENTS = 1000;
  private static final double MOST_WEAR = 0.5;

  private final WrenchSpec spec;
  private final Random chance;
  private final Instant start;
  private long taken;
  private long adjustedAt;
  private long restarts;
  private Instant restarted;

  /** A wrench switched on at {@code start}, its scatter from {@code chance} alone. */
  public Wrench(WrenchSpec spec, Instant start, Random chance) {
    this.spec = Objects.requireNonNull(spec, "spec");
    this.start = Objects.requireNonNull(start, "start");
    this.restarted = start;
    this.chance = Objects.requireNonNull(chance, "chance");
  }

  public WrenchSpec spec() {
    return spec;
  }

  /** What it shows too much by now, relative. */
  public double bias() {
    double worn = spec.life().wear() * (taken - adjustedAt) / WEAR_EVENTS;
    return (1 + spec.gauge().bias()) * (1 + Math.max(-MOST_WEAR, Math.min(MOST_WEAR, worn))) - 1;
  }

  /** Takes the wear out of it, as a laboratory does. */
  public void adjust() {
    adjustedAt = taken;
  }

  /** A joint turned, and what the wrench made of it. */
  public record Measured(Turn turn, Reading reading) {}

  /**
   * Tightens until the display shows {@code shownNm} worth of torque: whoever trusts a wrench that
   * shows too much tightens too little.
   */
  public Measured tighten(Joint joint, double shownNm, Instant now, Optional<String> fastener) {
    double error = error();
    Turn turn = joint.tighten(shownNm / error);
    return new Measured(turn, read(turn, error, now, fastener));
  }

  /** The same on a joint whose threads are crossed. */
  public Measured bind(Joint joint, double shownNm, Instant now, Optional<String> fastener) {
    double error = error();
    Turn turn = joint.bind(shownNm / error);
    return new Measured(turn, read(turn, error, now, fastener));
  }

  /** Undoes a joint that is held. */
  public Measured loosen(Joint joint, Instant now, Optional<String> fastener) {
    double error = error();
    Turn turn = joint.loosen();
    return new Measured(turn, read(turn, error, now, fastener));
  }

  private double error() {
    double gaussian = Math.max(-4, Math.min(4, chance.nextGaussian()));
    return (1 + bias()) * (1 + spec.gauge().scatter() * gaussian);
  }

  private Reading read(Turn turn, double error, Instant now, Optional<String> fastener) {
    Gauge gauge = spec.gauge();
    long index = taken++;
    restart(index, now);
    return new Reading(
        spec.serial(),
        spec.firstEvent().map(first -> number(first, index)),
        spec.clock().map(clock -> time(clock, now)),
        gauge.showTorque(turn.peakNm(), error),
        gauge.unit(),
        gauge.angle() ? Optional.of(gauge.showAngle(turn.degrees())) : Optional.empty(),
        turn.tightening(),
        spec.knowsPosition() ? fastener : Optional.empty(),
        spec.operator());
  }

  private void restart(long index, Instant now) {
    long due = spec.life().restart().map(r -> index / r.every()).orElse(0L);
    if (due > restarts) {
      restarts = due;
      restarted = now;
    }
  }

  private long number(long first, long index) {
    return restarts == 0 ? first + index : 1 + index % spec.life().restart().orElseThrow().every();
  }

  private Instant time(WrenchClock clock, Instant now) {
    Instant otherwise = clock.at(now, start);
    return restarts == 0
        ? otherwise
        : spec.life().restart().orElseThrow().shows(otherwise, restarted, now);
  }
}
