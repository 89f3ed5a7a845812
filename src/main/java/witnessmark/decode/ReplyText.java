package witnessmark.decode;

import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A reply with placeholders.
 *
 * @param text words in braces, e.g. <code>{wrench}</code>, are filled in; other braces stand as
 *     they are
 */
public record ReplyText(String text) {
  /** What can be filled in about an event. */
  static final List<String> OF_EVENTS = List.of("wrench", "event", "verdict", "fastener", "effect");

  /** What can be filled in about a scan. */
  static final List<String> OF_SCANS = List.of("meaning");

  private static final Pattern PLACEHOLDER = Pattern.compile("\\{([A-Za-z]+)\\}");

  /**
   * @throws IllegalArgumentException when the text is empty
   */
  public ReplyText {
    if (text.isEmpty()) {
      throw new IllegalArgumentException("the reply is empty");
    }
  }

  /**
   * Returns the reply itself.
   *
   * @throws IllegalArgumentException when it has a placeholder that is none of these
   */
  ReplyText only(List<String> allowed) {
    for (String word : words()) {
      if (!allowed.contains(word)) {
        throw new IllegalArgumentException("unknown placeholder {" + word + "}");
      }
    }
    return this;
  }

  /** The placeholders in the text, in order. */
  List<String> words() {
    return words(text);
  }

  private static List<String> words(String text) {
    return PLACEHOLDER.matcher(text).results().map(r -> r.group(1)).toList();
  }

  /** The text with its placeholders filled in, in one pass. */
  String fill(Map<String, String> values) {
    return PLACEHOLDER
        .matcher(text)
        .replaceAll(r -> Matcher.quoteReplacement(values.get(r.group(1))));
  }
}
