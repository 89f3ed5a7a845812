package witnessmark.stats;

import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * How well values fit a normal distribution whose mean and spread come from themselves.
 *
 * <p>A² = −n − Σ(2i − 1)·(ln Φ(z(i)) + ln(1 − Φ(z(n+1−i))))/n over the ordered z = (x − x̄)/s; the
 * adjusted one is A²·(1 + 0.75/n + 2.25/n²). The probability follows from the adjusted one by
 * D'Agostino and Stephens, Goodness-of-Fit Techniques (1986), table 4.9.
 *
 * @param statistic A²
 * @param adjusted the statistic for this n
 * @param probability p: how often normal values would fit as badly or worse
 */
public record AndersonDarling(double statistic, double adjusted, double probability) {
  /** With fewer values the adjustment does not hold. */
  public static final int LEAST = 8;

  /**
   * @throws IllegalArgumentException for fewer than {@link #LEAST} values, or without spread
   */
  public static AndersonDarling of(List<Double> values) {
    Summary summary = Summary.of(values);
    int n = summary.n();
    if (n < LEAST || !(summary.s() > 0)) {
      throw new IllegalArgumentException(
          n + " values with s " + summary.s() + "; " + LEAST + " with some spread are needed");
    }
    NormalDistribution normal = new NormalDistribution(null, 0, 1);
    double[] z = Summary.finite(values);
    Arrays.sort(z);
    for (int i = 0; i < n; i++) {
      z[i] = (z[i] - summary.mean()) / summary.s();
    }
    double sum = 0;
    for (int i = 0; i < n; i++) {
      // 1 - Phi(z) as Phi(-z): exact in the far tail
      sum += (2 * i + 1) * (log(normal, z[i]) + log(normal, -z[n - 1 - i]));
    }
    double statistic = -n - sum / n;
    double adjusted = statistic * (1 + 0.75 / n + 2.25 / n / n);
    return new AndersonDarling(statistic, adjusted, probability(adjusted));
  }

  private static double log(NormalDistribution normal, double z) {
    return Math.log(Math.max(normal.cumulativeProbability(z), Double.MIN_NORMAL));
  }

  private static double probability(double a) {
    if (a < 0.2) {
      return 1 - Math.exp(-13.436 + 101.14 * a - 223.73 * a * a);
    }
    if (a < 0.34) {
      return 1 - Math.exp(-8.318 + 42.796 * a - 59.938 * a * a);
    }
    if (a < 0.6) {
      return Math.exp(0.9177 - 4.279 * a - 1.38 * a * a);
    }
    // the fit's own minimum is at 153: beyond 10 nothing is left of the probability anyhow
    double within = Math.min(a, 10);
    return Math.exp(1.2937 - 5.709 * within + 0.0186 * within * within);
  }
}
