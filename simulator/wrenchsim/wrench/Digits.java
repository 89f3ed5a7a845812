package wrenchsim.wrench;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** The digits of a display: multiples of one step, always with the step's number of decimals. */
final class Digits {
  private Digits() {}

  /** The value at the nearest multiple of {@code step}, halves away from zero, in plain digits. */
  static String show(BigDecimal value, BigDecimal step) {
    BigDecimal steps = value.divide(step, 0, RoundingMode.HALF_UP);
    return steps.multiply(step).setScale(Math.max(0, step.scale())).toPlainString();
  }
}
