package witnessmark.torque;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LabelTest {
  @ParameterizedTest
  @ValueSource(strings = {"x", "TW-0417", "carrier-left/3", "Prüfschlüssel 7", "扳手", "🔩", "a b"})
  void printableTextIsReturnedUnchanged(String text) {
    assertThat(Label.check("wrench", text)).isSameAs(text);
  }

  @Test
  void lengthIsCountedInWholeCharacters() {
    assertThat(Label.check("wrench", "🔩".repeat(64))).hasSize(128);
    refused("🔩".repeat(65));
    refused("x".repeat(65));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        " ",
        " x",
        "x ",
        "x\u2003",
        "a\tb",
        "a\nb",
        "x\u0000",
        "x\u0085y",
        "x\u200by", // a format character of no width
        "x\u202ey", // turns the text around it
        "x\u2028y",
        "x\u2029y",
        "x\u0378y", // no character is assigned here
      })
  void whatCannotBeSeenOrToldApartIsRefused(String text) {
    refused(text);
  }

  @Test
  void halfOfASurrogatePairIsRefused() {
    refused("x\ud83d");
    refused("\udd29x");
  }

  private static void refused(String text) {
    assertThatThrownBy(() -> Label.check("wrench", text))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("wrench must be 1 to 64 printable characters without blanks at the ends");
  }
}
