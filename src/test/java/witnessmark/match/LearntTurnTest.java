package witnessmark.match;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.Random;
import org.apache.commons.math3.distribution.TDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a group's turns let one expect of the next; the simulations' seeds are fixed. */
class LearntTurnTest {
  private static final int TRIALS = 400_000;
  private static final double STATED = 1.0 / 2000;
  private static final double MEAN = 30;
  private static final double ASSUMED = 0.10;

  private static LearntTurn learnt(double... turns) {
    BigDecimal sum = BigDecimal.ZERO;
    BigDecimal squares = BigDecimal.ZERO;
    for (double turn : turns) {
      BigDecimal a = degrees(turn);
      sum = sum.add(a);
      squares = squares.add(a.multiply(a));
    }
    return new LearntTurn(turns.length, sum, squares, BigDecimal.TEN);
  }

  /** A tenth of a degree is what wrenches show. */
  private static BigDecimal degrees(double turn) {
    return BigDecimal.valueOf(Math.round(turn * 10), 1);
  }

  /** Apache Commons Math 3.6.1; SciPy gives the same to twelve digits. */
  @Test
  void theQuantilesAreThoseOfStudentsT() {
    for (int n = 1; n <= LearntTurn.MOST; n++) {
      int freedom = LearntTurn.WEIGHT + n - 1;
      double exact =
          new TDistribution(null, freedom, 1e-14).inverseCumulativeProbability(1 - STATED);
      LearntTurn some = new LearntTurn(n, BigDecimal.ONE, BigDecimal.ONE, BigDecimal.TEN);
      assertThat(some.quantile().doubleValue())
          .as("%d degrees of freedom", freedom)
          .isBetween(exact, exact + 1e-6);
    }
  }

  @Test
  void theLimitIsThatOfThePredictionInterval() {
    // one of 30: 30 − 4.586894 · 3 · √2
    assertThat(learnt(30).limit()).isEqualByComparingTo("10.5");
    // 28, 30, 32: s² = (10 · 9 + 8) / 12, 30 − 4.317792 · √(s² · 4 / 3)
    assertThat(learnt(28, 30, 32).limit()).isEqualByComparingTo("15.8");
    assertThat(learnt(28, 30, 32).below(new BigDecimal("15.75"))).isTrue();
    assertThat(learnt(28, 30, 32).below(new BigDecimal("15.76"))).isFalse();
    assertThat(learnt(28, 30, 32).below(new BigDecimal("60"))).isFalse();
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 5, 12, 20})
  void whereAGroupScattersAsAssumedAFreshOneIsRarelyBelowTheLimit(int seen) {
    double rate = rate(seen, new Random(20261125 + seen), random -> ASSUMED);
    assertThat(rate).isLessThan(STATED);
  }

  /** Groups whose scatters differ as the weight of the assumption says: the rate is the stated. */
  @Test
  void whereGroupsScatterAboutTheAssumptionTheRateIsTheStatedOne() {
    double rate =
        rate(
            20,
            new Random(7),
            random -> {
              double chiSquared = 0;
              for (int i = 0; i < LearntTurn.WEIGHT; i++) {
                double g = random.nextGaussian();
                chiSquared += g * g;
              }
              return ASSUMED * Math.sqrt(LearntTurn.WEIGHT / chiSquared);
            });
    // three standard errors of 200 cases in 400 000
    assertThat(rate).isCloseTo(STATED, within(3 * Math.sqrt(STATED / TRIALS)));
  }

  @Test
  void evenAtTwiceTheAssumedScatterAFreshOneIsBelowTheLimitInLessThanOneOfAHundred() {
    for (int seen : new int[] {1, 3, 5, 10, 20}) {
      double rate = rate(seen, new Random(seen), random -> 2 * ASSUMED);
      assertThat(rate).as("%d seen", seen).isBetween(STATED, 0.01);
    }
  }

  /**
   * The share of fresh fasteners that turn less than the limit that others of theirs have shown.
   */
  private static double rate(
      int seen, Random random, java.util.function.ToDoubleFunction<Random> scatter) {
    int below = 0;
    for (int trial = 0; trial < TRIALS; trial++) {
      double deviation = MEAN * scatter.applyAsDouble(random);
      double[] turns = new double[seen];
      for (int i = 0; i < seen; i++) {
        turns[i] = MEAN + deviation * random.nextGaussian();
      }
      double next = MEAN + deviation * random.nextGaussian();
      boolean near = next > 0.9 * MEAN; // hardly ever below a limit that is 0.82 of it at most
      if (!near && learnt(turns).below(degrees(next))) {
        below++;
      }
    }
    return below / (double) TRIALS;
  }
}
