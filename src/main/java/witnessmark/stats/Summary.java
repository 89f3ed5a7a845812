package witnessmark.stats;

import java.util.List;
import org.apache.commons.math3.stat.StatUtils;

/**
 * What a list of values comes to; all but the count in the values' unit.
 *
 * @param n how many values
 * @param mean x̄ = Σx / n
 * @param s standard deviation, s² = Σ(x − x̄)² / (n − 1), computed in two passes; 0 for one value
 * @param least the smallest value
 * @param greatest the largest value
 */
public record Summary(int n, double mean, double s, double least, double greatest) {
  public Summary {
    if (n < 1) {
      throw new IllegalArgumentException("no value to sum up; at least 1 is needed");
    }
    if (!(s >= 0) || !Double.isFinite(mean) || !Double.isFinite(s)) {
      throw new IllegalArgumentException("mean " + mean + " with s " + s + " are no such figures");
    }
  }

  /**
   * @throws IllegalArgumentException when there is no value, or one that is no finite number
   */
  public static Summary of(List<Double> values) {
    double[] x = finite(values);
    if (x.length == 0) {
      throw new IllegalArgumentException("no value to sum up; at least 1 is needed");
    }
    double mean = StatUtils.mean(x);
    return new Summary(
        x.length, mean, Math.sqrt(StatUtils.variance(x, mean)), StatUtils.min(x), StatUtils.max(x));
  }

  /** The values, each of them a finite number. */
  static double[] finite(List<Double> values) {
    double[] x = values.stream().mapToDouble(Double::doubleValue).toArray();
    for (int i = 0; i < x.length; i++) {
      if (!Double.isFinite(x[i])) {
        throw new IllegalArgumentException(
            "value " + (i + 1) + " is " + x[i] + "; finite numbers are needed");
      }
    }
    return x;
  }
}
