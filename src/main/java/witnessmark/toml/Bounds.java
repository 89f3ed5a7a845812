package witnessmark.toml;

import java.util.Optional;
import org.tomlj.TomlPosition;

/**
 * Keeps a text that would cost the TOML parser too much time, memory or stack from reaching it. The
 * parser goes one call deeper for each bracket and keeps a node for each mark.
 */
final class Bounds {
  static final int LENGTH = 1 << 20;
  static final int DEPTH = 32;
  static final int MARKS = 50_000;
  static final int WORD = 1_000;
  static final int TEXT = 20_000;

  /** The parser keeps some hundred bytes for each character of a text. */
  static final int TEXTS = 131_072;

  /** What is too much, and where. */
  record Excess(TomlPosition position, String what, String allowed) {}

  private final String text;
  private int line = 1;
  private int lineStart;
  private int depth;
  private int marks;
  private int word;
  private int texts;

  private Bounds(String text) {
    this.text = text;
  }

  static Optional<Excess> check(String text) {
    if (text.length() > LENGTH) {
      return Optional.of(
          new Excess(
              TomlPosition.positionAt(1, 1),
              "the file is of " + text.length() + " characters",
              "at most " + LENGTH + " are allowed"));
    }
    return new Bounds(text).scan();
  }

  private Optional<Excess> scan() {
    int at = 0;
    while (at < text.length()) {
      int from = at;
      char c = text.charAt(at);
      if (c == '"' || c == '\'') {
        at = endOfText(at);
        word = 0;
        texts += at - from;
        if (at - from > TEXT) {
          return excess(from, "a text is longer than " + TEXT + " characters", "shorten it");
        }
      } else if (c == '#') {
        at = endOfLine(at);
        word = 0;
      } else {
        at++;
        count(c);
      }
      if (depth > DEPTH) {
        return excess(
            from,
            "brackets are nested more than " + DEPTH + " deep",
            "write it flatter, or close a bracket left open before");
      }
      if (marks > MARKS) {
        return excess(
            from,
            "the file has more than " + MARKS + " of the marks = , . [ ] { } outside texts",
            "split the file");
      }
      if (texts > TEXTS) {
        return excess(
            from,
            "the texts of the file are longer than " + TEXTS + " characters together",
            "shorten them, or split the file");
      }
      if (word > WORD) {
        return excess(
            from,
            "a word without quotes is longer than " + WORD + " characters",
            "shorten it, or put it in quotes");
      }
      lines(from, at);
    }
    return Optional.empty();
  }

  private void count(char c) {
    if (c == '[' || c == '{') {
      depth++;
    } else if ((c == ']' || c == '}') && depth > 0) {
      depth--;
    }
    boolean mark = "=,.[]{}".indexOf(c) >= 0;
    marks += mark ? 1 : 0;
    word = mark || Character.isWhitespace(c) ? 0 : word + 1;
  }

  /** Where the text that begins at {@code from} ends: a broken one ends with its line. */
  private int endOfText(int from) {
    String quote = text.substring(from, from + 1);
    boolean escapes = quote.equals("\"");
    boolean many = text.startsWith(quote.repeat(3), from);
    int at = from + (many ? 3 : 1);
    while (at < text.length()) {
      char c = text.charAt(at);
      if (c == '\n' && !many) {
        return at;
      }
      if (text.startsWith(many ? quote.repeat(3) : quote, at)) {
        return at + (many ? 3 : 1);
      }
      boolean escape = escapes && c == '\\' && (many || !text.startsWith("\n", at + 1));
      at += escape ? 2 : 1;
    }
    return text.length();
  }

  private int endOfLine(int from) {
    int end = text.indexOf('\n', from);
    return end < 0 ? text.length() : end;
  }

  private void lines(int from, int to) {
    for (int i = from; i < to; i++) {
      if (text.charAt(i) == '\n') {
        line++;
        lineStart = i + 1;
      }
    }
  }

  private Optional<Excess> excess(int at, String what, String allowed) {
    return Optional.of(
        new Excess(TomlPosition.positionAt(line, at - lineStart + 1), what, allowed));
  }
}
