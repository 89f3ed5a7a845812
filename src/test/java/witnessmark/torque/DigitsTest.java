package witnessmark.torque;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DigitsTest {
  @ParameterizedTest
  @ValueSource(strings = {"5", "32.50", "007", "-1.5", "1e1", "1E+1", "1.2e-99", "0.000"})
  void digitsStayAsWrittenAndHaveTheirExactValue(String text) {
    assertThat(new Digits(text)).hasToString(text);
    assertThat(new Digits(text).value()).isEqualTo(new BigDecimal(text));
  }

  @Test
  void numbersOfEqualValueAreEqualOnlyWhenWrittenAlike() {
    assertThat(new Digits("32.50")).isEqualTo(new Digits("32.50"));
    assertThat(new Digits("32.50")).hasSameHashCodeAs(new Digits("32.50"));
    assertThat(new Digits("32.50")).isNotEqualTo(new Digits("32.5"));
  }

  @Test
  void twentyFourDigitsStandOnEitherSideOfThePoint() {
    String most = "9".repeat(24) + "." + "9".repeat(24);
    assertThat(new Digits(most).value()).isEqualTo(new BigDecimal(most));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        " ",
        "5 ",
        "+5",
        ".5",
        "5.",
        "1,5",
        "1 000",
        "0x1F",
        "1e",
        "1e100",
        "1e+100",
        "NaN",
        "Infinity",
        "1d",
        "٣",
        "1000000000000000000000000",
        "0.0000000000000000000000001",
        "1\n"
      })
  void anythingElseIsNamedWithWhatIsAllowed(String text) {
    assertThatThrownBy(() -> new Digits(text))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage(
            "\"" + text + "\" is not a decimal number; allowed are forms like 32.54, 5 or 1.2e1");
  }
}
