package witnessmark.report;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class ParagraphTest {
  @Test
  void aTextIsBrokenAtBlanksAndContinuedUnderTheIndent() {
    assertThat(Paragraph.of("  one two three four", 10, "    "))
        .containsExactly("  one two", "    three", "    four");
  }

  @Test
  void whatFitsIsLeftAsItIs() {
    assertThat(Paragraph.of("one   two ", 10, "  ")).containsExactly("one   two ");
    assertThat(Paragraph.of("", 10, "  ")).containsExactly("");
  }

  @Test
  void aWordWiderThanALineStaysWhole() {
    assertThat(Paragraph.of("abcdefghijkl mn opqrstuvwxyzab", 10, "  "))
        .containsExactly("abcdefghijkl", "  mn", "  opqrstuvwxyzab");
  }
}
