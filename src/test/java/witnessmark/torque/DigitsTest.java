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

  @Test
  void theFormIsThatOfThePattern() {
    java.util.regex.Pattern form =
        java.util.regex.Pattern.compile("-?[0-9]{1,24}(\\.[0-9]{1,24})?([eE][+-]?[0-9]{1,2})?");
    java.util.Random random = new java.util.Random(6);
    String letters = "0123456789012345678901234567890123456789.-+eE x";
    int formed = 0;
    for (int i = 0; i < 300_000; i++) {
      StringBuilder text = new StringBuilder();
      int length = random.nextInt(random.nextInt(10) == 0 ? 60 : 9);
      for (int j = 0; j < length; j++) {
        text.append(letters.charAt(random.nextInt(letters.length())));
      }
      boolean taken = true;
      try {
        new Digits(text.toString());
        formed++;
      } catch (IllegalArgumentException e) {
        taken = false;
      }
      assertThat(taken).as(text.toString()).isEqualTo(form.matcher(text).matches());
    }
    assertThat(formed).isGreaterThan(10_000);
    String long24 = "1".repeat(24);
    new Digits("-" + long24 + "." + long24 + "e-99");
    assertThatThrownBy(() -> new Digits(long24 + "1")).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Digits("1." + long24 + "1"))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Digits("1e100")).isInstanceOf(IllegalArgumentException.class);
  }
}
