package witnessmark.torque;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Computed numbers as texts of few digits, for people and records; nothing is decided on them. */
public final class Rounded {
  /** How many significant digits a computed torque in an entry has at most. */
  public static final MathContext RECORD = new MathContext(9, RoundingMode.HALF_EVEN);

  private static final int DECIMALS = 24;

  private Rounded() {}

  /** The number to so many digits, without zeros behind; it fits {@link Digits}. */
  public static String text(BigDecimal value, MathContext digits) {
    BigDecimal rounded = value.round(digits);
    BigDecimal bounded =
        rounded.scale() > DECIMALS ? rounded.setScale(DECIMALS, digits.getRoundingMode()) : rounded;
    return bounded.signum() == 0 ? "0" : bounded.stripTrailingZeros().toPlainString();
  }
}
