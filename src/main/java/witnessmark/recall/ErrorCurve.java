package witnessmark.recall;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import witnessmark.entry.CalibrationPoint;
import witnessmark.torque.Torque;
import witnessmark.wrench.Deviation;

/**
 * A wrench's deviation over its range: linear between the points of a calibration, and beyond the
 * outermost as at them.
 *
 * @param points mean deviation in per cent of the reference, by indicated torque in newton metres;
 *     at least one
 */
public record ErrorCurve(NavigableMap<BigDecimal, BigDecimal> points) {
  /** No deviation at all, where none is known. */
  public static final ErrorCurve NONE =
      new ErrorCurve(new TreeMap<>(Map.of(BigDecimal.ONE, BigDecimal.ZERO)));

  /**
   * @throws IllegalArgumentException when there is no point
   */
  public ErrorCurve {
    if (points.isEmpty()) {
      throw new IllegalArgumentException("a curve has a point at least");
    }
    points = Collections.unmodifiableNavigableMap(new TreeMap<>(points));
  }

  /**
   * Through the points of a calibration; of several at one torque the one with the larger mean
   * deviation counts.
   */
  public static ErrorCurve of(List<CalibrationPoint> points) {
    NavigableMap<BigDecimal, BigDecimal> means = new TreeMap<>();
    points.forEach(
        p ->
            means.merge(
                p.indicated().newtonMetres(),
                Deviation.mean(p),
                (a, b) -> a.abs().compareTo(b.abs()) < 0 ? b : a));
    return new ErrorCurve(means);
  }

  /** The deviation at an indicated torque, in per cent of the reference, to 16 digits. */
  public BigDecimal at(Torque indicated) {
    BigDecimal torque = indicated.newtonMetres();
    Map.Entry<BigDecimal, BigDecimal> below = points.floorEntry(torque);
    Map.Entry<BigDecimal, BigDecimal> above = points.ceilingEntry(torque);
    if (below == null) {
      return above.getValue();
    }
    if (above == null || above.getKey().equals(below.getKey())) {
      return below.getValue();
    }
    BigDecimal rise = above.getValue().subtract(below.getValue());
    BigDecimal run = above.getKey().subtract(below.getKey());
    return below
        .getValue()
        .add(rise.multiply(torque.subtract(below.getKey())).divide(run, MathContext.DECIMAL64));
  }

  /** Whether the torque lies between the outermost points, so that no deviation is assumed. */
  public boolean covers(Torque indicated) {
    BigDecimal torque = indicated.newtonMetres();
    return points.firstKey().compareTo(torque) <= 0 && points.lastKey().compareTo(torque) >= 0;
  }
}
