package witnessmark.wrench;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import witnessmark.entry.CalibrationPoint;

/**
 * The contributions to the uncertainty of a calibration, all in per cent of the reading.
 *
 * <p>W = k·w with k = 2 and w = √(w_md² + w_r² + w_rep² + w_od² + w_int² + w_l² + w_re²): the
 * measuring device W_md/2, and the resolution, reproducibility, output drive, interface and loading
 * point each as b/(2√3) of their spread b, and the repeatability as a standard deviation of the
 * mean. The form is that of ISO 6789-2, from memory; its text was not at hand.
 *
 * @param device expanded uncertainty W_md of the measuring device, k = 2
 * @param resolution spread b of the resolution
 * @param reproducibility spread b between repeated mountings
 * @param drive spread b between positions of the output drive
 * @param interfaces spread b between interfaces
 * @param loading spread b between loading points
 * @param repeatability standard deviation of the mean of the readings
 */
public record Budget(
    BigDecimal device,
    BigDecimal resolution,
    BigDecimal reproducibility,
    BigDecimal drive,
    BigDecimal interfaces,
    BigDecimal loading,
    BigDecimal repeatability) {
  private static final MathContext DIGITS = MathContext.DECIMAL64;
  private static final BigDecimal TWO = BigDecimal.valueOf(2);
  private static final BigDecimal TWELVE = BigDecimal.valueOf(12);

  /**
   * @throws IllegalArgumentException when one is negative
   */
  public Budget {
    for (BigDecimal part :
        List.of(device, resolution, reproducibility, drive, interfaces, loading, repeatability)) {
      if (part.signum() < 0) {
        throw new IllegalArgumentException(
            "contribution " + part + " % is negative; 0 or more is allowed");
      }
    }
  }

  /** The relative standard uncertainty w, in per cent, to 16 digits. */
  public BigDecimal standard() {
    BigDecimal sum = device.divide(TWO, DIGITS).pow(2).add(repeatability.pow(2));
    for (BigDecimal spread : List.of(resolution, reproducibility, drive, interfaces, loading)) {
      sum = sum.add(spread.pow(2).divide(TWELVE, DIGITS));
    }
    return sum.sqrt(DIGITS);
  }

  /** The expanded uncertainty W, k = 2, in per cent, to 16 digits. */
  public BigDecimal expanded() {
    return standard().multiply(TWO);
  }

  /**
   * The uncertainty interval W′ = |mean deviation| + |b_ep| + W at a point, in per cent: how far
   * from the truth a reading there may be.
   *
   * @param variation b_ep, the zero or return-point variation in per cent; 0 where there is none
   * @param expanded W in per cent
   */
  public static BigDecimal interval(
      CalibrationPoint point, BigDecimal variation, BigDecimal expanded) {
    return Deviation.mean(point).abs().add(variation.abs()).add(expanded);
  }
}
