package witnessmark.wrench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import witnessmark.entry.CalibrationPoint;
import witnessmark.torque.Digits;
import witnessmark.torque.Torque;
import witnessmark.torque.WrenchKind;

class DeviationTest {
  /**
   * The formula is from memory of ISO 6789; the figures are computed, the traps of its denominator.
   */
  @ParameterizedTest
  @CsvSource({
    "100, 104, -3.846154, true",
    "100, 96, 4.166667, false",
    "104, 100, 4.0, true",
    "100, 98, 2.040816, true",
    "104.001, 100, 4.001, false",
    "96, 100, -4.0, true",
  })
  void theDenominatorIsTheReferenceAndLimitsAreIncluded(
      String indicated, String reference, double percent, boolean kept) {
    CalibrationPoint point = point(indicated + " N.m", "4", reference + " N.m");
    assertThat(Deviation.mean(point).doubleValue()).isCloseTo(percent, within(5e-7));
    assertThat(Deviation.within(point)).isEqualTo(kept);
  }

  @Test
  void aLimitIsKeptExactlyInWhateverUnit() {
    // 104 lbf.ft shown on 100 lbf.ft, the reference read in newton metres
    assertThat(Deviation.within(point("104 lbf.ft", "4", "135.58179483314004 N.m"))).isTrue();
    assertThat(Deviation.within(point("104 lbf.ft", "4", "135.58179483314003 N.m"))).isFalse();
  }

  @Test
  void oneReadingBeyondIsEnoughThoughTheMeanIsWithin() {
    CalibrationPoint point = point("50 N.m", "4", "50 N.m", "50 N.m", "47 N.m");
    assertThat(Deviation.mean(point).abs()).isLessThan(BigDecimal.valueOf(4));
    assertThat(Deviation.within(List.of(point))).isFalse();
  }

  @Test
  void theUsualRuleAllowsMoreUpToTenNewtonMetresIncluded() {
    CalibrationRule usual = CalibrationRule.usual(WrenchKind.INDICATING);
    assertThat(usual.permissible(Torque.parse("10 N.m"))).isEqualTo(new Digits("6"));
    assertThat(usual.permissible(Torque.parse("10.01 N.m"))).isEqualTo(new Digits("4"));
    assertThat(usual.permissible(Torque.parse("7.38 lbf.ft"))).isEqualTo(new Digits("4"));
    assertThat(usual.permissible(Torque.parse("7.37 lbf.ft"))).isEqualTo(new Digits("6"));
  }

  @Test
  void aRuleOfNonsenseIsRefused() {
    assertThatThrownBy(() -> rule(List.of("60", "40"), 5))
        .hasMessage("points [60, 40] % of the range must rise, above 0 and up to 100");
    assertThatThrownBy(() -> rule(List.of("60"), 0))
        .hasMessage("readings 0 is out of range; 1 to 100 is allowed");
  }

  private static CalibrationRule rule(List<String> points, int readings) {
    CalibrationRule usual = CalibrationRule.usual(WrenchKind.SETTING);
    return new CalibrationRule(
        usual.deviation(),
        usual.smallUpTo(),
        usual.smallDeviation(),
        points.stream().map(Digits::new).toList(),
        readings,
        12,
        5000);
  }

  private static CalibrationPoint point(String indicated, String permissible, String... reference) {
    return new CalibrationPoint(
        Torque.parse(indicated),
        Arrays.stream(reference).map(Torque::parse).toList(),
        new Digits(permissible));
  }
}
