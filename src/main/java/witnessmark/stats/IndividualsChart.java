package witnessmark.stats;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.stat.StatUtils;

/**
 * The chart of single values and that of their moving ranges, in the order in which they happened.
 *
 * <p>MR is the difference of a value from the one before it, regardless of sign. With MR̄ their
 * mean and d2 = 1.128: σ = MR̄ / d2, limits x̄ ± 3σ, and the ranges' limit D4·MR̄ with D4 = 3.267
 * (NIST/SEMATECH e-Handbook 6.3.2.2). Exactly d2 is 2/√π = 1.128 379 and D4 is 3.266 532; the
 * rounded ones are what tables print, so that the figures can be checked by hand and agree with
 * other programs. All figures in the values' unit.
 *
 * @param values in order
 * @param centre x̄, the centre line
 * @param ranges the moving ranges, one fewer than the values
 * @param meanRange MR̄
 * @param signals the points at which run rules show a change
 */
public record IndividualsChart(
    List<Double> values,
    double centre,
    List<Double> ranges,
    double meanRange,
    List<Signal> signals) {
  /** Mean range of two values of a normal distribution in units of its sigma, as printed. */
  public static final double D2 = 1.128;

  /** Upper limit of a range of two in units of the mean range, as printed. */
  public static final double D4 = 3.267;

  public IndividualsChart {
    values = List.copyOf(values);
    ranges = List.copyOf(ranges);
    signals = List.copyOf(signals);
  }

  /**
   * The chart with limits from the values themselves.
   *
   * @throws IllegalArgumentException when there are fewer than two values
   */
  public static IndividualsChart of(List<Double> values) {
    double[] x = Summary.finite(values);
    if (x.length < 2) {
      throw new IllegalArgumentException(
          x.length + " value makes no moving range; at least 2 are needed");
    }
    double centre = StatUtils.mean(x);
    List<Double> ranges = new ArrayList<>();
    double sum = 0;
    for (int i = 1; i < x.length; i++) {
      double range = Math.abs(x[i] - x[i - 1]);
      ranges.add(range);
      sum += range;
    }
    double meanRange = sum / ranges.size();
    return new IndividualsChart(
        values, centre, ranges, meanRange, signals(x, centre, meanRange / D2));
  }

  /** The points of a series at which run rules signal, for a known centre line and sigma. */
  public static List<Signal> signals(double[] values, double centre, double sigma) {
    double[] z = standardised(values, centre, sigma);
    List<Signal> found = new ArrayList<>();
    for (int i = 0; i < z.length; i++) {
      List<RunRule> rules = RunRule.at(z, 0, i);
      if (!rules.isEmpty()) {
        found.add(new Signal(i, rules));
      }
    }
    return found;
  }

  /** Without any spread every value is on the centre line. */
  private static double[] standardised(double[] values, double centre, double sigma) {
    double[] z = new double[values.length];
    for (int i = 0; i < z.length; i++) {
      z[i] = sigma > 0 ? (values[i] - centre) / sigma : 0;
    }
    return z;
  }

  /** The values as distances from the centre line in sigma. */
  double[] standardised() {
    return standardised(Summary.finite(values), centre, sigma());
  }

  /** σ = MR̄ / 1.128, the spread from one value to the next. */
  public double sigma() {
    return meanRange / D2;
  }

  /** The upper limit, x̄ + 3σ. */
  public double upper() {
    return centre + 3 * sigma();
  }

  /** The lower limit, x̄ − 3σ. */
  public double lower() {
    return centre - 3 * sigma();
  }

  /** The upper limit of the moving ranges, 3.267·MR̄; their lower one is 0. */
  public double rangeUpper() {
    return D4 * meanRange;
  }

  /** The places, from 0, of the later value of each moving range above its limit. */
  public List<Integer> wideRanges() {
    List<Integer> wide = new ArrayList<>();
    for (int i = 0; i < ranges.size(); i++) {
      if (ranges.get(i) > rangeUpper()) {
        wide.add(i + 1);
      }
    }
    return wide;
  }
}
