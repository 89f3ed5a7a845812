package witnessmark.torque;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TorqueTest {
  @Test
  void aTorqueKeepsItsDigitsAndIsComparedBySize() {
    Torque written = Torque.parse("32.50 N.m");
    assertThat(written).hasToString("32.50 N.m");
    assertThat(written).isEqualByComparingTo(Torque.parse("3250 cN.m"));
    assertThat(written).isNotEqualTo(Torque.parse("32.5 N.m"));
  }

  @ParameterizedTest
  @CsvSource({
    "100000, N.m",
    "10000000, cN.m",
    "73756.2149, lbf.ft",
    "1.0e5, N.m",
    "0, kgf.cm",
    "-0, N.m",
  })
  void torquesUpToTheLimitAreTaken(String digits, String unit) {
    assertThat(Torque.of(digits, TorqueUnit.of(unit).orElseThrow()).digits()).hasToString(digits);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "-0.1 N.m|torque -0.1 is negative; 0 or more is allowed",
        "100000.01 N.m|torque 100000.01 N.m is too large; at most 100000 N.m is allowed",
        "73756.2150 lbf.ft|torque 73756.2150 lbf.ft is too large; at most 100000 N.m is allowed",
        "24|\"24\" is not a torque; write number, blank, unit, e.g. \"24 lbf.ft\"",
        "24lbf.ft|\"24lbf.ft\" is not a torque; write number, blank, unit, e.g. \"24 lbf.ft\"",
        "24 Nm|unknown unit \"Nm\"; did you mean \"N.m\"? Allowed are N.m cN.m lbf.ft lbf.in ozf.in"
            + " kgf.m kgf.cm",
        "24 ft-lb|unknown unit \"ft-lb\"; did you mean \"lbf.ft\"? Allowed are N.m cN.m lbf.ft lbf.in"
            + " ozf.in kgf.m kgf.cm",
        "24 foo|unknown unit \"foo\"; allowed are N.m cN.m lbf.ft lbf.in ozf.in kgf.m kgf.cm",
        "24,5 N.m|\"24,5\" is not a decimal number; allowed are forms like 32.54, 5 or 1.2e1",
      })
  void aFaultIsSaidInASentence(String text, String message) {
    assertThatThrownBy(() -> Torque.parse(text))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage(message);
  }

  @Test
  void nothingIsNoTorque() {
    assertThatThrownBy(() -> Torque.of("1", null)).isInstanceOf(NullPointerException.class);
    assertThatThrownBy(() -> new Digits(null)).isInstanceOf(NullPointerException.class);
  }
}
