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
  /** What can be filled in. */
  public static final List<String> PLACEHOLDERS =
      List.of("wrench", "event", "verdict", "fastener", "effect");

  private static final Pattern PLACEHOLDER = Pattern.compile("\\{([A-Za-z]+)\\}");

  /**
   * @throws IllegalArgumentException when the text is empty or a placeholder is unknown
   */
  public ReplyText {
    if (text.isEmpty()) {
      throw new IllegalArgumentException("the reply is empty");
    }
    for (String word : words(text)) {
      if (!PLACEHOLDERS.contains(word)) {
        throw new IllegalArgumentException("unknown placeholder {" + word + "}");
      }
    }
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
