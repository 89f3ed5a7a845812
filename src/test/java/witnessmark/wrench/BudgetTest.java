package witnessmark.wrench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;
import witnessmark.entry.CalibrationPoint;
import witnessmark.torque.Digits;
import witnessmark.torque.Torque;

/**
 * No worked example of the standard was found: the formula is from memory, the case constructed.
 */
class BudgetTest {
  private static final Budget BUDGET = budget("0.5", "0.12", "0.4", "0.3", "0.3", "0.2", "0.25");

  private static Budget budget(String... parts) {
    List<BigDecimal> p = java.util.Arrays.stream(parts).map(BigDecimal::new).toList();
    return new Budget(p.get(0), p.get(1), p.get(2), p.get(3), p.get(4), p.get(5), p.get(6));
  }

  @Test
  void theContributionsAreJoinedAsRootOfTheSumOfSquares() {
    // computed apart in double arithmetic
    assertThat(BUDGET.standard().doubleValue()).isCloseTo(0.3973243847, within(5e-11));
    assertThat(BUDGET.expanded().doubleValue()).isCloseTo(0.7946487694, within(5e-11));
  }

  @Test
  void theIntervalAddsTheMeanDeviationAndTheVariation() {
    // 101.1 shown on 100: 1.1 %
    CalibrationPoint point =
        new CalibrationPoint(
            Torque.parse("101.1 N.m"), List.of(Torque.parse("100 N.m")), new Digits("4"));
    assertThat(Budget.interval(point, new BigDecimal("-0.1"), BUDGET.expanded()).doubleValue())
        .isCloseTo(1.9946487694, within(5e-11));
  }

  @Test
  void aNegativeContributionIsNone() {
    assertThatThrownBy(() -> budget("0.5", "-0.1", "0", "0", "0", "0", "0"))
        .hasMessage("contribution -0.1 % is negative; 0 or more is allowed");
  }
}
