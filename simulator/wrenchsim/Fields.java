package wrenchsim;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** {@code name=value} pairs between commas, each name once and from a known list. */
final class Fields {
  private final Map<String, String> values = new LinkedHashMap<>();

  /** Reads a text; a first pair without {@code =} is the value of the first known name. */
  Fields(String text, List<String> known) {
    for (String pair : text.split(",", -1)) {
      boolean bare = values.isEmpty() && !pair.contains("=");
      String[] parts = bare ? new String[] {known.get(0), pair} : pair.split("=", 2);
      if (parts.length != 2 || !known.contains(parts[0])) {
        throw new IllegalArgumentException(
            "'%s' is no NAME=VALUE; the names are %s".formatted(pair, String.join(", ", known)));
      }
      if (values.putIfAbsent(parts[0], parts[1]) != null) {
        throw new IllegalArgumentException("'" + parts[0] + "' is given twice in '" + text + "'");
      }
    }
  }

  Optional<String> text(String name) {
    return Optional.ofNullable(values.get(name));
  }

  /**
   * The value of a name without which others mean nothing.
   *
   * @throws IllegalArgumentException when one of the others is given alone
   */
  Optional<String> only(String needed, String... others) {
    for (String other : others) {
      if (values.containsKey(other) && !values.containsKey(needed)) {
        throw new IllegalArgumentException("%s goes with %s=N only".formatted(other, needed));
      }
    }
    return text(needed);
  }

  BigDecimal decimal(String name, String otherwise) {
    String text = text(name).orElse(otherwise);
    try {
      return new BigDecimal(text);
    } catch (NumberFormatException e) {
      throw new IllegalArgumentException(
          "%s is a decimal number, but got '%s'".formatted(name, text));
    }
  }

  boolean yes(String name, boolean otherwise) {
    String text = text(name).orElse(otherwise ? "yes" : "no");
    if (!text.equals("yes") && !text.equals("no")) {
      throw new IllegalArgumentException("%s is yes or no, but got '%s'".formatted(name, text));
    }
    return text.equals("yes");
  }
}
