package witnessmark.torque;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class VisibleTest {
  @ParameterizedTest
  @CsvSource({
    "plain N·m ≥ 33 – 日本, plain N·m ≥ 33 – 日本",
    "a\u001b[31mred, a\\u001B[31mred",
    "a\u009b31mred, a\\u009B31mred",
    "a\u202ebackwards, a\\u202Ebackwards",
    "a\u2066isolated, a\\u2066isolated",
    "a\u200bnothing, a\\u200Bnothing",
    "a\u2028line, a\\u2028line",
    "a\ud800half, a\\uD800half",
    "a\udb40\udc01tag, a\\uDB40\\uDC01tag",
    "\ud83d\udd27, \ud83d\udd27",
  })
  void whatATerminalWouldObeyIsWrittenOut(String text, String shown) {
    assertThat(Visible.of(text)).isEqualTo(shown);
  }

  @Test
  void noLineBeginsInsideAText() {
    assertThat(Visible.of("one\r\ntwo\ttab\u0000\u007f\u0085"))
        .isEqualTo("one\\u000D\\u000Atwo\\u0009tab\\u0000\\u007F\\u0085");
  }

  @Test
  void whateverComesNothingHiddenIsLeftAndWhatIsShownStays() {
    long seed = 20261126;
    Random random = new Random(seed);
    for (int i = 0; i < 2000; i++) {
      StringBuilder text = new StringBuilder();
      for (int c = 0; c < 20; c++) {
        text.append((char) random.nextInt(random.nextBoolean() ? 0x300 : 0x10000));
      }
      String shown = Visible.of(text.toString());
      assertThat(shown.codePoints().noneMatch(Visible::hidden))
          .as("seed %d: %s", seed, shown)
          .isTrue();
      assertThat(Visible.of(shown)).isEqualTo(shown);
    }
  }
}
