package witnessmark.torque;

import java.math.BigDecimal;

/**
 * The lowest and highest acceptable torque, limits included, compared in exact arithmetic.
 *
 * @param low lowest acceptable torque
 * @param high highest acceptable torque, not below {@code low}
 */
public record Band(Torque low, Torque high) {
  private static final BigDecimal HUNDRED = new BigDecimal(100);

  /**
   * @throws IllegalArgumentException when the band is upside down
   */
  public Band {
    if (low.compareTo(high) > 0) {
      throw new IllegalArgumentException(
          "band upside down: lowest " + low + " is above highest " + high);
    }
  }

  /** Target ± a percentage of it; {@code percent} is 0 to 100. */
  public static Band plusMinusPercent(Torque target, BigDecimal percent) {
    if (percent.signum() < 0 || percent.compareTo(HUNDRED) > 0) {
      throw new IllegalArgumentException("tolerance " + percent + " % is not within 0 to 100 %");
    }
    BigDecimal half = target.digits().value().multiply(percent).movePointLeft(2);
    return around(target, half);
  }

  /**
   * Target ± a torque in any unit; the limits are written in the target's unit where that is exact.
   */
  public static Band plusMinus(Torque target, Torque tolerance) {
    if (tolerance.unit() != target.unit()) {
      throw new IllegalArgumentException(
          "tolerance in "
              + tolerance.unit()
              + " but torque in "
              + target.unit()
              + "; use one unit");
    }
    return around(target, tolerance.digits().value());
  }

  private static Band around(Torque target, BigDecimal half) {
    BigDecimal centre = target.digits().value();
    return new Band(at(centre.subtract(half), target), at(centre.add(half), target));
  }

  private static Torque at(BigDecimal value, Torque like) {
    BigDecimal plain = value.signum() == 0 ? BigDecimal.ZERO : value.stripTrailingZeros();
    return Torque.of(plain.toPlainString(), like.unit());
  }

  /** Where the torque lies: below, inside (limits included), or above. */
  public Side side(Torque torque) {
    if (torque.compareTo(low) < 0) {
      return Side.BELOW;
    }
    return torque.compareTo(high) > 0 ? Side.ABOVE : Side.INSIDE;
  }

  /** {@code 40.5 to 49.5 N.m}, or with both units where they differ. */
  @Override
  public String toString() {
    return low.unit() == high.unit() ? low.digits() + " to " + high : low + " to " + high;
  }
}
