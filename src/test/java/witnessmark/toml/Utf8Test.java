package witnessmark.toml;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.HexFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class Utf8Test {
  @Test
  void whatIsUtf8IsReadAsItIs() {
    String text = "a\u00fc\r\n\ud83d\udd27\n";
    assertThat(Utf8.text("f.toml", text.getBytes(UTF_8))).isEqualTo(text);
    assertThat(Utf8.text("f.toml", new byte[0])).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "ff,1:1",
    "6162fc63,1:3",
    "610a62fc,2:2",
    "c3bcfc,1:2",
    "0d0ac3,2:1", // cut off within a character
    "f09f94a7ff,1:2",
    "fffe5b00,1:1", // UTF-16
  })
  void theFirstByteThatIsNotIsNamed(String hex, String place) {
    assertThatThrownBy(() -> Utf8.text("f.toml", HexFormat.of().parseHex(hex)))
        .isInstanceOf(FaultsException.class)
        .hasMessage("f.toml:" + place + ": the file is not UTF-8 from here on; save it as UTF-8");
  }
}
