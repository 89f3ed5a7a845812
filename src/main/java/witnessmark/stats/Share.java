package witnessmark.stats;

import org.apache.commons.math3.distribution.BetaDistribution;

/**
 * So many of so many.
 *
 * @param count at most {@code of}
 * @param of at least 1
 */
public record Share(int count, int of) {
  public Share {
    if (of < 1 || count < 0 || count > of) {
      throw new IllegalArgumentException(count + " of " + of + " is no share");
    }
  }

  public double value() {
    return (double) count / of;
  }

  /** Where the true share lies with 95 % confidence: Clopper and Pearson (1934). */
  public Interval interval() {
    double tail = (1 - Index.CONFIDENCE) / 2;
    return new Interval(
        count == 0 ? 0 : quantile(count, of - count + 1, tail),
        count == of ? 1 : quantile(count + 1, of - count, 1 - tail));
  }

  private static double quantile(double a, double b, double p) {
    return new BetaDistribution(null, a, b).inverseCumulativeProbability(p);
  }
}
