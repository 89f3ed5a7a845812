package witnessmark.torque;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** The cosine as a decimal, computed without floating point. */
final class Cosine {
  /** How many decimals the result has; the last one is rounded to nearest. */
  static final int DECIMALS = 12;

  private static final MathContext WORKING = new MathContext(40);
  private static final BigDecimal PI =
      new BigDecimal("3.14159265358979323846264338327950288419716939937510");
  private static final BigDecimal SEMICIRCLE = BigDecimal.valueOf(180);
  private static final BigDecimal RIGHT = BigDecimal.valueOf(90);

  private Cosine() {}

  /**
   * The cosine of an angle of 0 to 180 degrees, to {@link #DECIMALS} decimals: exactly 1, 0.5, 0,
   * −0.5 and −1 at 0, 60, 90, 120 and 180 degrees.
   */
  static BigDecimal of(BigDecimal degrees) {
    return degrees.compareTo(RIGHT) > 0
        ? acute(SEMICIRCLE.subtract(degrees)).negate()
        : acute(degrees);
  }

  /** The power series, whose terms here fall below the last decimal within 20 of them. */
  private static BigDecimal acute(BigDecimal degrees) {
    BigDecimal x = degrees.multiply(PI).divide(SEMICIRCLE, WORKING);
    BigDecimal square = x.multiply(x, WORKING);
    BigDecimal term = BigDecimal.ONE;
    BigDecimal sum = BigDecimal.ONE;
    for (int n = 1; n <= 20; n++) {
      term =
          term.multiply(square, WORKING)
              .divide(BigDecimal.valueOf((2L * n - 1) * 2 * n), WORKING)
              .negate();
      sum = sum.add(term, WORKING);
    }
    return sum.setScale(DECIMALS, RoundingMode.HALF_EVEN);
  }
}
