package wrenchsim.wrench;

import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import java.util.Random;
import wrenchsim.joint.Joint;
import wrenchsim.joint.Turn;

/** A wrench in use: it turns joints and numbers what it measured. */
public final class Wrench {
  private final WrenchSpec spec;
  private final Random chance;
  private final Instant start;
  private long taken;

  /** A wrench switched on at {@code start}, its scatter from {@code chance} alone. */
  public Wrench(WrenchSpec spec, Instant start, Random chance) {
    this.spec = Objects.requireNonNull(spec, "spec");
    this.start = Objects.requireNonNull(start, "start");
    this.chance = Objects.requireNonNull(chance, "chance");
  }

  public WrenchSpec spec() {
    return spec;
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

  /** Undoes a joint that is held. */
  public Measured loosen(Joint joint, Instant now, Optional<String> fastener) {
    double error = error();
    Turn turn = joint.loosen();
    return new Measured(turn, read(turn, error, now, fastener));
  }

  private double error() {
    double gaussian = Math.max(-4, Math.min(4, chance.nextGaussian()));
    return (1 + spec.gauge().bias()) * (1 + spec.gauge().scatter() * gaussian);
  }

  private Reading read(Turn turn, double error, Instant now, Optional<String> fastener) {
    Gauge gauge = spec.gauge();
    long index = taken++;
    return new Reading(
        spec.serial(),
        spec.firstEvent().map(first -> first + index),
        spec.clock().map(clock -> clock.at(now, start)),
        gauge.showTorque(turn.peakNm(), error),
        gauge.unit(),
        gauge.angle() ? Optional.of(gauge.showAngle(turn.degrees())) : Optional.empty(),
        turn.tightening(),
        spec.knowsPosition() ? fastener : Optional.empty(),
        spec.operator());
  }
}
