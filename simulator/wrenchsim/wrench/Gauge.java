package wrenchsim.wrench;

import java.math.BigDecimal;
import java.util.Objects;

/**
 * The measuring part of a wrench.
 *
 * @param unit the unit it shows
 * @param min the lowest torque it is good for, in its unit, 0 or more
 * @param max the highest torque it is good for, in its unit, above {@code min}
 * @param resolution the step of its torque display, in its unit, above 0
 * @param scatter the relative standard deviation of what it shows, 0 to 0.2
 * @param bias what it shows too much, relative: 0.04 shows 4 % too much; above -0.5 and below 0.5
 * @param angle whether it shows the angle, in steps of 0.1 degree
 */
public record Gauge(
    Unit unit,
    BigDecimal min,
    BigDecimal max,
    BigDecimal resolution,
    double scatter,
    double bias,
    boolean angle) {

  private static final BigDecimal ANGLE_STEP = new BigDecimal("0.1");

  public Gauge {
    Objects.requireNonNull(unit, "unit");
    if (min.signum() < 0 || max.compareTo(min) <= 0) {
      throw new IllegalArgumentException(
          "a wrench needs 0 <= min < max, but got min %s and max %s"
              .formatted(min.toPlainString(), max.toPlainString()));
    }
    if (resolution.signum() <= 0 || resolution.compareTo(max) >= 0) {
      throw new IllegalArgumentException(
          "the resolution must lie above 0 and below max, but is " + resolution.toPlainString());
    }
    if (!(scatter >= 0 && scatter <= 0.2)) {
      throw new IllegalArgumentException("the scatter must be 0 to 0.2, but is " + scatter);
    }
    if (!(bias > -0.5 && bias < 0.5)) {
      throw new IllegalArgumentException("the bias must lie between -0.5 and 0.5, but is " + bias);
    }
  }

  /** Whether its range holds a band given in N·m. */
  public boolean holds(double lowNm, double highNm) {
    return unit.toNm(min) <= lowNm && highNm <= unit.toNm(max);
  }

  /** Whether it shows a torque in N·m at all. */
  public boolean reaches(double torqueNm) {
    return torqueNm <= unit.toNm(max);
  }

  /** The digits shown for a torque in N·m that it feels with a relative error. */
  String showTorque(double trueNm, double error) {
    return Digits.show(unit.fromNm(trueNm * error), resolution);
  }

  /** The digits shown for an angle in degrees. */
  String showAngle(double degrees) {
    return Digits.show(BigDecimal.valueOf(degrees), ANGLE_STEP);
  }
}
