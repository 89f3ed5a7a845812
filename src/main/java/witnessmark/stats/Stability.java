package witnessmark.stats;

import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.PoissonDistribution;

/**
 * Whether a series of values is one process, as far as its own chart shows.
 *
 * <p>A stable process signals now and then: with all four run rules once in {@link
 * RunRule#AVERAGE_RUN} points, so that of 400 points of a stable process nearly every series has a
 * signal somewhere. A series is called unstable where chance explains its signals no longer: where
 * so many alarms come once in a hundred stable series, or a point so far out does.
 *
 * @param alarms signals counted as they come to a person who looks at the chart afresh after each
 * @param expected the alarms of a stable process of as many points, n / 91.75
 * @param manyByChance how often a stable process gives as many alarms (Poisson)
 * @param farthest the largest distance from the centre line in sigma
 * @param farByChance how often one of as many points of a stable process is as far out
 */
public record Stability(
    int alarms, double expected, double manyByChance, double farthest, double farByChance) {
  /** What is rarer than this in a stable process shows that it is none. */
  public static final double RARE = 0.01;

  public static Stability of(IndividualsChart chart) {
    double[] z = chart.standardised();
    int alarms = 0;
    int first = 0;
    double farthest = 0;
    for (int i = 0; i < z.length; i++) {
      farthest = Math.max(farthest, Math.abs(z[i]));
      if (!RunRule.at(z, first, i).isEmpty()) {
        alarms++;
        first = i + 1;
      }
    }
    double expected = z.length / RunRule.AVERAGE_RUN;
    double many =
        1
            - new PoissonDistribution(null, expected, 1e-12, 100_000)
                .cumulativeProbability(alarms - 1);
    double tails = 2 * new NormalDistribution(null, 0, 1).cumulativeProbability(-farthest);
    double far = -Math.expm1(z.length * Math.log1p(-tails));
    return new Stability(alarms, expected, many, farthest, far);
  }

  /** Whether there are more alarms than chance explains. */
  public boolean manyAlarms() {
    return manyByChance < RARE;
  }

  /** Whether a point is farther out than chance explains. */
  public boolean farOut() {
    return farByChance < RARE;
  }

  /** Whether nothing speaks against one process. */
  public boolean stable() {
    return !manyAlarms() && !farOut();
  }
}
