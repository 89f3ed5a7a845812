package witnessmark.doctor;

import java.util.Locale;
import java.util.Optional;
import witnessmark.torque.Visible;

/**
 * One thing that was looked at.
 *
 * @param area what it belongs to, e.g. {@code ledger}
 * @param found what was found, a sentence on one line
 * @param next what to do about it, with the exact command where there is one
 */
public record Finding(String area, Mark mark, String found, Optional<String> next) {
  public Finding {
    found = Visible.of(found);
    next = next.map(Visible::of);
    if (mark == Mark.BAD && next.isEmpty()) {
      throw new IllegalArgumentException("what is bad needs a next step: " + found);
    }
  }

  static Finding good(String area, String found) {
    return new Finding(area, Mark.GOOD, found, Optional.empty());
  }

  static Finding warn(String area, String found, String next) {
    return new Finding(area, Mark.WARN, found, Optional.of(next));
  }

  static Finding bad(String area, String found, String next) {
    return new Finding(area, Mark.BAD, found, Optional.of(next));
  }

  /** What is told in one text that ends in {@code Run: } and a command. */
  static Finding told(String area, Mark mark, String text) {
    String[] parts = text.split(" Run: ", 2);
    return new Finding(area, mark, parts[0], Optional.of(parts[1]));
  }

  /**
   * What is told in one text whose first sentence says what is the matter; what follows is the next
   * step.
   *
   * @param next where nothing follows
   */
  static Finding told(String area, String before, String text, String next) {
    int end = text.indexOf(". ");
    return end < 0
        ? bad(area, before + ended(text), next)
        : bad(area, before + text.substring(0, end + 1), ended(text.substring(end + 2)));
  }

  /** The words with a capital letter and a mark at their end. */
  static String sentence(String words) {
    return ended(words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1));
  }

  private static String ended(String words) {
    return words.matches("(?s).*[.?!]") ? words : words + ".";
  }
}
