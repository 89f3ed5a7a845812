package witnessmark.stats;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.stat.regression.SimpleRegression;

/**
 * Whether the deviations of repeated checks drift, and when they reach a limit if that goes on: the
 * straight line of least squares over the checks' numbers, with Student's t.
 */
public sealed interface Drift {
  /** With fewer checks nothing is told. */
  int LEAST = 6;

  /** How rare a slope must be without drift to be called one. */
  double RARE = 0.05;

  /** There are too few checks to tell. */
  record TooFew(int checks) implements Drift {
    @Override
    public String sentence(String unit) {
      return String.format(
          Locale.ROOT,
          "%d %s: too few to tell a drift; %d are needed.",
          checks,
          checks == 1 ? "check" : "checks",
          LEAST);
    }
  }

  /**
   * The scatter of the checks would give such a slope without any drift.
   *
   * @param slope change from one check to the next, in the values' unit
   * @param interval of the slope, 95 %
   */
  record NotSeen(double slope, Interval interval) implements Drift {
    @Override
    public String sentence(String unit) {
      return String.format(
          Locale.ROOT,
          "No drift is seen: %+.3f %s a check, 95 %% %+.3f to %+.3f.",
          slope,
          unit,
          interval.low(),
          interval.high());
    }
  }

  /**
   * There is a drift.
   *
   * @param slope change from one check to the next, in the values' unit
   * @param interval of the slope, 95 %
   * @param limit the limit it goes towards, with sign
   * @param line in how many checks the line reaches the limit, 0 where it has; empty where that is
   *     more than there were
   * @param earliest in how many checks a single one may first be beyond it: where the interval in
   *     which the next value lies with 95 % reaches the limit; empty where that is more than there
   *     were
   * @param checks how many there were, which is as far as the line is drawn
   */
  record Seen(
      double slope,
      Interval interval,
      double limit,
      OptionalInt line,
      OptionalInt earliest,
      int checks)
      implements Drift {
    @Override
    public String sentence(String unit) {
      String drift =
          String.format(
              Locale.ROOT,
              "It drifts by %+.3f %s a check, 95 %% %+.3f to %+.3f.",
              slope,
              unit,
              interval.low(),
              interval.high());
      String goal =
          (limit > 0 ? "+" : "")
              + BigDecimal.valueOf(limit).stripTrailingZeros().toPlainString()
              + " "
              + unit;
      String line =
          this.line.isEmpty()
              ? " If that goes on, it does not reach " + goal + " in the next " + checks + " checks"
              : this.line.getAsInt() == 0
                  ? " It has reached " + goal
                  : " If that goes on, it reaches " + goal + " in about " + checks(this.line);
      String single =
          this.line.equals(OptionalInt.of(0)) || earliest.isEmpty()
              ? "."
              : "; a single check may be beyond it in " + checks(earliest) + ".";
      return drift + line + single;
    }

    private static String checks(OptionalInt n) {
      return n.getAsInt() + (n.getAsInt() == 1 ? " check" : " checks");
    }
  }

  /** What it says, for people. */
  String sentence(String unit);

  /**
   * @param values the deviations in the order of the checks
   * @param limit how far they may be off, above 0, to both sides
   */
  static Drift of(List<Double> values, double limit) {
    if (!(limit > 0)) {
      throw new IllegalArgumentException("limit " + limit + " is none; above 0 is allowed");
    }
    int n = Summary.finite(values).length;
    if (n < LEAST) {
      return new TooFew(n);
    }
    SimpleRegression line = new SimpleRegression();
    for (int i = 0; i < n; i++) {
      line.addData(i + 1, values.get(i));
    }
    double half = line.getSlopeConfidenceInterval(1 - Index.CONFIDENCE);
    Interval interval = new Interval(line.getSlope() - half, line.getSlope() + half);
    if (interval.low() <= 0 && interval.high() >= 0) {
      return new NotSeen(line.getSlope(), interval);
    }
    double sign = Math.signum(line.getSlope());
    double t = new TDistribution(null, n - 2.0).inverseCumulativeProbability(1 - RARE / 2);
    return new Seen(
        line.getSlope(),
        interval,
        sign * limit,
        first(n, 0, k -> sign * line.predict(n + k) >= limit),
        first(n, 1, k -> sign * line.predict(n + k) + t * error(line, n, k) >= limit),
        n);
  }

  private static OptionalInt first(int n, int from, IntPredicate reached) {
    return IntStream.rangeClosed(from, n).filter(reached).findFirst();
  }

  /** Standard error of one value that is k checks ahead: s·√(1 + 1/n + (x − x̄)²/Sxx). */
  private static double error(SimpleRegression line, int n, int ahead) {
    double off = n + ahead - (n + 1) / 2.0;
    return Math.sqrt(line.getMeanSquareError() * (1 + 1.0 / n + off * off / line.getXSumSquares()));
  }
}
