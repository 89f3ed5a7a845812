package witnessmark.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RefusalClassTest {
  /** The codes of docs/sentences.md whose class has another name. */
  private static final Map<String, String> CLASSES =
      Map.of("decimal-comma", "field", "pattern", "frame", "pointer", "element");

  private static List<String[]> documented() throws IOException {
    String page = Files.readString(Path.of("docs/sentences.md"));
    return page.substring(page.indexOf("## Bytes that are refused"))
        .lines()
        .filter(l -> l.startsWith("| `"))
        .map(l -> l.split("\\| ", 4))
        .toList();
  }

  @Test
  void everySentenceOfTheDocumentHasAClassOfItsOwn() throws IOException {
    assertThat(documented()).hasSizeGreaterThan(40);
    for (String[] cells : documented()) {
      String sentence = cells[3].replaceFirst(" \\|$", "");
      String word = RefusalClass.of(sentence).code();
      assertThat(word).as(sentence).isNotEqualTo("other");
      String code = cells[1].replaceAll("[` ]", "");
      String expected = CLASSES.getOrDefault(code, code);
      if (RefusalClass.codes().contains(expected) && !code.equals("pointer")) {
        assertThat(word).as(sentence).isEqualTo(expected);
      }
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "the topic names no station; a station's name is 1 to 64 letters|topic",
        "the station is not among the stations of this link; add it|topic",
        "this program failed to decide about it: ArithmeticException|program",
        "words that nobody has written yet|other",
      })
  void theBridgesOwnReasonsHaveAClassToo(String reason, String word) {
    assertThat(RefusalClass.of(reason).code()).isEqualTo(word);
  }
}
