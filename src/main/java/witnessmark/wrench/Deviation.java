package witnessmark.wrench;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import witnessmark.entry.CalibrationPoint;
import witnessmark.torque.Torque;

/**
 * How far what a wrench shows is from what the reference measured: (Xa - Xr) / Xr, in per cent of
 * the reference Xr.
 *
 * <p>The form is that of ISO 6789, from memory; its text was not at hand.
 */
public final class Deviation {
  private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

  private Deviation() {}

  /** The deviation of one reading in per cent, to 34 digits. */
  public static BigDecimal percent(Torque indicated, Torque reference) {
    BigDecimal measured = reference.newtonMetres();
    return indicated
        .newtonMetres()
        .subtract(measured)
        .multiply(HUNDRED)
        .divide(measured, MathContext.DECIMAL128);
  }

  /** The mean deviation at a point in per cent, to 34 digits. */
  public static BigDecimal mean(CalibrationPoint point) {
    return point.reference().stream()
        .map(r -> percent(point.indicated(), r))
        .reduce(BigDecimal.ZERO, BigDecimal::add)
        .divide(BigDecimal.valueOf(point.reference().size()), MathContext.DECIMAL128);
  }

  /** Whether every reading at every point keeps its permissible deviation, limits included. */
  public static boolean within(List<CalibrationPoint> points) {
    return points.stream().allMatch(Deviation::within);
  }

  /** Whether every reading at the point keeps the permissible deviation, decided exactly. */
  public static boolean within(CalibrationPoint point) {
    BigDecimal indicated = point.indicated().newtonMetres();
    return point.reference().stream()
        .map(Torque::newtonMetres)
        .allMatch(
            r ->
                indicated
                        .subtract(r)
                        .abs()
                        .multiply(HUNDRED)
                        .compareTo(r.multiply(point.permissible().value()))
                    <= 0);
  }
}
