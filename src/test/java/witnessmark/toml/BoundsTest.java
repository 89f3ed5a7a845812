package witnessmark.toml;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class BoundsTest {
  private static void refused(String text, String message) {
    assertThatThrownBy(() -> TomlFile.parse("f.toml", text))
        .isInstanceOf(FaultsException.class)
        .hasMessage(message);
  }

  private static void taken(String text) {
    assertThatCode(() -> TomlFile.parse("f.toml", text)).doesNotThrowAnyException();
  }

  @Test
  void bracketsMayNestToTheLimitAndNotBeyond() {
    taken("a = " + "[".repeat(Bounds.DEPTH) + "]".repeat(Bounds.DEPTH));
    refused(
        "# a\na = " + "[".repeat(Bounds.DEPTH + 1),
        "f.toml:2:37: brackets are nested more than 32 deep; write it flatter, or close a bracket"
            + " left open before");
    refused(
        "a = " + "{a = ".repeat(Bounds.DEPTH + 1),
        "f.toml:1:165: brackets are nested more than 32 deep; write it flatter, or close a bracket"
            + " left open before");
  }

  @Test
  void bracketsInTextsAndCommentsDoNotNest() {
    String many = "[".repeat(100);
    taken("a = \"" + many + "\"");
    taken("a = \"\\\"" + many + "\"");
    taken("a = '" + many + "'");
    taken("a = '\\'\nb = '" + many + "'");
    taken("a = \"\"\"\n\"" + many + "\n\"\"\"");
    taken("a = '''\n'" + many + "\n'''");
    taken("a = \"\"\nb = ''\n# " + many);
  }

  @Test
  void aTextLeftOpenEndsWithItsLine() {
    refused(
        "a = \"\\\nb = " + "[".repeat(100),
        "f.toml:2:37: brackets are nested more than 32 deep; write it flatter, or close a bracket"
            + " left open before");
  }

  @Test
  void textsWordsAndMarksHaveTheirLimits() {
    taken("a = \"" + "x".repeat(Bounds.TEXT - 2) + "\"");
    refused(
        "a = \"" + "x".repeat(Bounds.TEXT) + "\"",
        "f.toml:1:5: a text is longer than 20000 characters; shorten it");
    refused(
        ("a = \"" + "x".repeat(Bounds.TEXT - 2) + "\"\n").repeat(7),
        "f.toml:7:5: the texts of the file are longer than 131072 characters together; shorten"
            + " them, or split the file");
    refused(
        "a = " + "1".repeat(Bounds.WORD + 1),
        "f.toml:1:1005: a word without quotes is longer than 1000 characters; shorten it, or put"
            + " it in quotes");
    refused(
        "a = [" + "\n1,".repeat(Bounds.MARKS),
        "f.toml:50000:2: the file has more than 50000 of the marks = , . [ ] { } outside texts;"
            + " split the file");
  }

  @Test
  void anErrorThatTheLibraryThrowsIsAFaultLikeAnyOther() {
    refused(
        "a = 1\n[\"\\x\"]\n",
        "f.toml:2:3: Invalid escape sequence '\\x'; the file must be TOML 1.0");
  }

  @Test
  void aFaultStaysOneLineWhateverTheFileHolds() {
    TomlFile file = TomlFile.parse("f.toml", "\"a\\nb\" = 1\n");
    file.root().text("name");
    file.root().finish();

    assertThat(file.faults())
        .extracting(Fault::toString)
        .containsExactly("f.toml:1:1: unknown key \"a\\u000Ab\" in the file; allowed are name");
  }
}
