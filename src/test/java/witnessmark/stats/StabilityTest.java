package witnessmark.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class StabilityTest {
  private static final long SEED = 20_261_126;

  /**
   * How many points of a process in control it takes until a rule signals: 1/(2Φ(−3)) = 370.398 for
   * the first rule, exactly; for all four 91.75, Champ and Woodall, Technometrics 29 (1987), from
   * memory, and 91.83 ± 0.06 by another program. Within four standard errors of 20,000 runs.
   */
  @Test
  void runLengthsInControl() {
    assertThat(RunRule.AVERAGE_RUN).isEqualTo(91.75);
    within4Errors(370.398, runs(true));
    within4Errors(RunRule.AVERAGE_RUN, runs(false));
  }

  private static void within4Errors(double expected, List<Double> runs) {
    Summary summary = Summary.of(runs);
    double error = summary.s() / Math.sqrt(summary.n());
    assertThat(summary.mean()).as("seed %d", SEED).isCloseTo(expected, within(4 * error));
    assertThat(4 * error).as("precise enough to tell").isLessThan(expected * 0.03);
  }

  private static List<Double> runs(boolean firstRuleOnly) {
    Random random = new Random(SEED);
    List<Double> lengths = new ArrayList<>();
    double[] z = new double[8192];
    for (int run = 0; run < 20_000; run++) {
      int i = 0;
      boolean signal = false;
      while (!signal) {
        z[i] = random.nextGaussian();
        List<RunRule> shown = RunRule.at(z, 0, i++);
        signal = firstRuleOnly ? shown.contains(RunRule.BEYOND_3_SIGMA) : !shown.isEmpty();
      }
      lengths.add((double) i);
    }
    return lengths;
  }

  /** Both tests together call 1 in 50 stable series unstable, whatever their length. */
  @ParameterizedTest
  @ValueSource(ints = {30, 50, 100, 400})
  void aStableProcessIsSeldomCalledUnstable(int n) {
    assertThat(refused(n, i -> 0)).isBetween(0.005, 0.03);
  }

  @Test
  void aChangeIsSeen() {
    assertThat(refused(100, i -> i < 50 ? 0 : 2)).isGreaterThan(0.95);
    assertThat(refused(400, i -> i < 200 ? 0 : 1.5)).isGreaterThan(0.99);
    assertThat(refused(100, i -> 3.0 * i / 100)).isGreaterThan(0.85);
    assertThat(refused(40, i -> i == 20 ? 7 : 0)).isGreaterThan(0.95);
  }

  /** What these tests do not see: half of it, and in few values more. */
  @Test
  void aSmallChangeInFewValuesIsMostlyNotSeen() {
    assertThat(refused(40, i -> i < 20 ? 0 : 1)).isLessThan(0.3);
  }

  private static double refused(int n, IntToDoubleFunction shift) {
    Random random = new Random(SEED);
    int series = 2000;
    int refused = 0;
    for (int s = 0; s < series; s++) {
      List<Double> values = new ArrayList<>();
      for (int i = 0; i < n; i++) {
        values.add(random.nextGaussian() + shift.applyAsDouble(i));
      }
      refused += Stability.of(IndividualsChart.of(values)).stable() ? 0 : 1;
    }
    return (double) refused / series;
  }

  /** An alarm ends a run: eight more are needed for the next of its kind. */
  @Test
  void alarmsAreCountedAfresh() {
    List<Double> values = new ArrayList<>();
    for (int i = 0; i < 20; i++) {
      values.add(i % 2 == 0 ? 0.1 : 1.1);
    }
    for (int i = 0; i < 20; i++) {
      values.add(i % 2 == 0 ? -0.1 : -1.1);
    }
    IndividualsChart chart = IndividualsChart.of(values);
    Stability stability = Stability.of(chart);
    assertThat(chart.signals()).hasSize(2 * 13);
    assertThat(stability.alarms()).isEqualTo(2 * 2);
    assertThat(stability.manyAlarms()).isTrue();
    assertThat(stability.stable()).isFalse();
    assertThat(stability.expected()).isCloseTo(40 / 91.75, within(1e-12));
  }
}
