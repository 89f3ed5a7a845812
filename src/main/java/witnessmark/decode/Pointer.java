package witnessmark.decode;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A JSON Pointer (RFC 6901).
 *
 * @param tokens its reference tokens, unescaped; none for the whole value
 */
public record Pointer(List<String> tokens) {
  public Pointer {
    tokens = List.copyOf(tokens);
  }

  /**
   * Reads the text form, e.g. {@code /peak/value}.
   *
   * @throws IllegalArgumentException when it does not begin with a slash, or a tilde is not
   *     followed by 0 or 1
   */
  public static Pointer parse(String text) {
    if (!text.startsWith("/")) {
      throw new IllegalArgumentException("\"" + text + "\" does not begin with /");
    }
    if (text.replace("~0", "").replace("~1", "").contains("~")) {
      throw new IllegalArgumentException("\"" + text + "\" has a ~ without 0 or 1 after it");
    }
    List<String> tokens = new ArrayList<>();
    for (String token : text.substring(1).split("/", -1)) {
      // In this order, so that ~01 becomes ~1 (RFC 6901, section 4).
      tokens.add(token.replace("~1", "/").replace("~0", "~"));
    }
    return new Pointer(tokens);
  }

  /** What it points to in the value. */
  Optional<Json> in(Json value) {
    Json at = value;
    for (String token : tokens) {
      if (at instanceof Json.Fields f && f.fields().containsKey(token)) {
        at = f.fields().get(token);
      } else if (at instanceof Json.Items i && index(token) < i.items().size()) {
        at = i.items().get(index(token));
      } else {
        return Optional.empty();
      }
    }
    return Optional.of(at);
  }

  /** The array index that the token writes, without leading zeros; beyond any array when none. */
  private static int index(String token) {
    return token.matches("0|[1-9][0-9]{0,8}") ? Integer.parseInt(token) : Integer.MAX_VALUE;
  }
}
