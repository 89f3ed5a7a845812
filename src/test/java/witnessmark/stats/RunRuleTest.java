package witnessmark.stats;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * The Western Electric rules on small series of centre 0 and sigma 1, points counted from 1; the
 * facts are those of the tests of R's package qcc, tests/testthat/test-rules.R.
 */
class RunRuleTest {
  private static List<Integer> flagged(RunRule rule, double... series) {
    return IndividualsChart.signals(series, 0, 1).stream()
        .filter(s -> s.rules().contains(rule))
        .map(s -> s.index() + 1)
        .toList();
  }

  @Test
  void beyondThreeSigma() {
    assertThat(flagged(RunRule.BEYOND_3_SIGMA, 0, 3.2, -3.5, 2.9)).containsExactly(2, 3);
    assertThat(flagged(RunRule.BEYOND_3_SIGMA, 0, 3.2, -3.4, 3)).containsExactly(2, 3);
  }

  @Test
  void twoOfThreeBeyondTwoSigma() {
    RunRule rule = RunRule.TWO_OF_THREE_BEYOND_2_SIGMA;
    assertThat(flagged(rule, 0, 2.5, 1.0, 2.6, 0)).containsExactly(4);
    assertThat(flagged(rule, 0, 2.3, 0.4, 2.2, -2.4, -0.2, -2.5)).containsExactly(4, 7);
    // one on each side is no two on one
    assertThat(flagged(rule, 0, 2.5, -2.5, 0)).isEmpty();
  }

  @Test
  void fourOfFiveBeyondOneSigma() {
    RunRule rule = RunRule.FOUR_OF_FIVE_BEYOND_1_SIGMA;
    assertThat(flagged(rule, 0, 1.2, 1.3, 0.2, 1.4, 1.5)).containsExactly(6);
    assertThat(flagged(rule, 1.2, 1.3, 0.2, 1.4, 1.5, -1.2, -1.3, -0.1, -1.4, -1.5))
        .containsExactly(5, 10);
  }

  @Test
  void eightOnOneSide() {
    RunRule rule = RunRule.EIGHT_ON_ONE_SIDE;
    assertThat(flagged(rule, -1, -1, -1, -1, -1, -1, -1, -1, 1)).containsExactly(8);
    assertThat(flagged(rule, 1, 1, 1, 1, 1, 1, 1, 0, 1)).isEmpty();
  }

  @Test
  void rulesAreNumberedAsInTheHandbook() {
    assertThat(RunRule.BEYOND_3_SIGMA.number()).isEqualTo(1);
    assertThat(RunRule.EIGHT_ON_ONE_SIDE.number()).isEqualTo(4);
  }
}
