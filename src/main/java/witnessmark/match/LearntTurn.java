package witnessmark.match;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Optional;
import witnessmark.job.Condition;
import witnessmark.job.JobState;
import witnessmark.job.Pull;
import witnessmark.procedure.Stage;
import witnessmark.procedure.Telling;
import witnessmark.procedure.TightenStep;

/**
 * How far the fresh fasteners of a group turned in one pass of this job, and what that lets one
 * expect of the next.
 *
 * <p>Lower limit of a Student prediction interval for one more value, the variance pooled from that
 * of the group and the scatter that the procedure assumes, which weighs as much as {@value #WEIGHT}
 * degrees of freedom: mean − t·√(s²·(1 + 1/n)), s² = (w·(c·mean)² + Σ(a − mean)²)/(w + n − 1), at w
 * + n − 1 degrees of freedom. One fresh fastener in 2 000 turns less, where the group scatters as
 * assumed.
 *
 * @param count how many, at most {@value #MOST}
 * @param sum of their degrees
 * @param squares sum of the squares of their degrees
 * @param scatter assumed standard deviation in per cent of the mean
 */
record LearntTurn(int count, BigDecimal sum, BigDecimal squares, BigDecimal scatter) {
  /** What the assumed scatter weighs beside what the group has shown: our own choice. */
  static final int WEIGHT = 10;

  private static final BigDecimal SEVEN = BigDecimal.valueOf(7);

  /** More would hardly move the limit, and a group may have hundreds. */
  static final int MOST = 20;

  /**
   * The 0.9995 quantile of Student's t for 10 to 29 degrees of freedom, rounded up to six decimals:
   * computed by Apache Commons Math 3.6.1 and by SciPy, which agree.
   */
  private static final BigDecimal[] QUANTILES = {
    new BigDecimal("4.586894"), new BigDecimal("4.436980"), new BigDecimal("4.317792"),
    new BigDecimal("4.220832"), new BigDecimal("4.140455"), new BigDecimal("4.072766"),
    new BigDecimal("4.014997"), new BigDecimal("3.965127"), new BigDecimal("3.921646"),
    new BigDecimal("3.883406"), new BigDecimal("3.849517"), new BigDecimal("3.819278"),
    new BigDecimal("3.792131"), new BigDecimal("3.767627"), new BigDecimal("3.745399"),
    new BigDecimal("3.725144"), new BigDecimal("3.706612"), new BigDecimal("3.689592"),
    new BigDecimal("3.673907"), new BigDecimal("3.659406")
  };

  /**
   * What the group has shown; empty before its first. Who turned no further than a tight one turns
   * was none, and does not count.
   */
  static Optional<LearntTurn> of(JobState job, Stage stage) {
    TightenStep step = (TightenStep) stage.step();
    Telling telling = step.care().telling();
    int first = job.plan().first(step);
    int count = 0;
    BigDecimal sum = BigDecimal.ZERO;
    BigDecimal squares = BigDecimal.ZERO;
    for (int i = 0; i < step.positions().size() && count < MOST; i++) {
      Condition condition = job.condition(first + i);
      Optional<Pull> pull = condition.pull();
      if (condition.done() > stage.pass()
          && pull.isPresent()
          && pull.get().pass() == stage.pass()
          && pull.get().turn().isPresent()
          && pull.get().turn().get().compareTo(telling.recheckAngle()) > 0) {
        BigDecimal turn = pull.get().turn().get();
        count++;
        sum = sum.add(turn);
        squares = squares.add(turn.multiply(turn));
      }
    }
    return count == 0
        ? Optional.empty()
        : Optional.of(new LearntTurn(count, sum, squares, telling.scatter()));
  }

  /**
   * Whether a fresh fastener hardly ever turns so little. Compares (mean − angle)² with t²·s²·(1 +
   * 1/n), both sides cleared of fractions, so that it is exact.
   */
  boolean below(BigDecimal angle) {
    BigDecimal n = BigDecimal.valueOf(count);
    BigDecimal short_ = sum.subtract(n.multiply(angle));
    if (short_.signum() <= 0) {
      return false;
    }
    BigDecimal left = n.multiply(BigDecimal.valueOf(freedom())).multiply(short_).multiply(short_);
    return left.compareTo(square(quantile()).multiply(n.add(BigDecimal.ONE)).multiply(spread()))
        > 0;
  }

  /** The lower limit itself, in degrees with one decimal, for people. */
  BigDecimal limit() {
    return mean().subtract(reach()).max(BigDecimal.ZERO).setScale(1, RoundingMode.HALF_UP);
  }

  /** The upper limit likewise, in degrees: one fresh fastener in 2 000 turns more. */
  BigDecimal most() {
    return mean().add(reach());
  }

  /** Whether an angle is most of the usual turn: seven tenths of the mean, our own choice. */
  boolean mostOf(BigDecimal angle) {
    return angle.multiply(BigDecimal.valueOf(10L * count)).compareTo(sum.multiply(SEVEN)) >= 0;
  }

  private BigDecimal mean() {
    return sum.divide(BigDecimal.valueOf(count), MathContext.DECIMAL64);
  }

  private BigDecimal reach() {
    BigDecimal n = BigDecimal.valueOf(count);
    return square(quantile())
        .multiply(n.add(BigDecimal.ONE))
        .multiply(spread())
        .divide(n.pow(3).multiply(BigDecimal.valueOf(freedom())), MathContext.DECIMAL64)
        .sqrt(MathContext.DECIMAL64);
  }

  /** w·c²·Σ² + n²·Q − n·Σ², which is n²·(w + n − 1)·s². */
  private BigDecimal spread() {
    BigDecimal n = BigDecimal.valueOf(count);
    BigDecimal total = square(sum);
    BigDecimal share = scatter.movePointLeft(2);
    return BigDecimal.valueOf(WEIGHT)
        .multiply(square(share))
        .multiply(total)
        .add(n.multiply(n).multiply(squares))
        .subtract(n.multiply(total));
  }

  private int freedom() {
    return WEIGHT + count - 1;
  }

  /** The quantile at this many degrees of freedom. */
  BigDecimal quantile() {
    return QUANTILES[count - 1];
  }

  private static BigDecimal square(BigDecimal value) {
    return value.multiply(value);
  }
}
