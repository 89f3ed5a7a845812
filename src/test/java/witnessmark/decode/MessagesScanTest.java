package witnessmark.decode;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MessagesScanTest {
  private static List<Decoded> decode(String json) {
    return Messages.scan(json.getBytes(StandardCharsets.UTF_8));
  }

  @Test
  void aScanHasACodeAndPerhapsABadge() {
    String json = "{\"scan\":\"ATR-26-0147\",\"operator\":\"badge-07\",\"more\":1}";
    assertThat(decode(json))
        .containsExactly(new Scanned("ATR-26-0147", Optional.of("badge-07"), json));
    assertThat(decode("{\"scan\":\"x\",\"operator\":null}"))
        .containsExactly(new Scanned("x", Optional.empty(), "{\"scan\":\"x\",\"operator\":null}"));
  }

  @Test
  void aCodeMayHoldControlCharacters() {
    assertThat(decode("{\"scan\":\"01\\u001d17\"}"))
        .containsExactly(new Scanned("01\u001d17", Optional.empty(), "{\"scan\":\"01\\u001d17\"}"));
  }

  @Test
  void aCodeIsMeasuredInWholeCharacters() {
    String longest = "{\"scan\":\"" + "\ud83d\udd29".repeat(512) + "\"}";
    assertThat(decode(longest)).singleElement().isInstanceOf(Scanned.class);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "{\"operator\":\"badge-07\"}|the message has no scan, which is required",
        "{\"scan\":null}|the message has no scan, which is required",
        "{\"scan\":12}|scan is a number; a text is allowed",
        "{\"scan\":\"\"}|scan has 0 characters; 1 to 512 are allowed",
        "{\"scan\":\"\\ud800\"}|scan holds half of a surrogate pair; whole characters are allowed",
        "{\"scan\":\"x\",\"operator\":\" \"}|operator must be 1 to 64 printable characters without"
            + " blanks at the ends",
        "{\"scan\":\"x\",\"scan\":\"y\"}|the field \"scan\" stands twice; once is allowed",
      })
  void aFaultIsSaidInASentence(String json, String reason) {
    Sample all = Sample.of(json.getBytes(StandardCharsets.UTF_8));
    assertThat(decode(json)).containsExactly(new Malformed(reason, all));
  }

  @Test
  void anElementThatIsNoObjectIsRefused() {
    assertThat(decode("[[]]"))
        .containsExactly(
            new Malformed(
                "a scan is an array; a JSON object is allowed",
                Sample.of("[]".getBytes(StandardCharsets.UTF_8))));
  }

  @Test
  void aCodeOf513CharactersIsRefused() {
    String json = "{\"scan\":\"" + "x".repeat(513) + "\"}";
    Sample all = Sample.of(json.getBytes(StandardCharsets.UTF_8));
    assertThat(decode(json))
        .containsExactly(new Malformed("scan has 513 characters; 1 to 512 are allowed", all));
  }
}
