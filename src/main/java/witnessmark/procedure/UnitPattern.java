package witnessmark.procedure;

import com.google.re2j.Pattern;
import com.google.re2j.PatternSyntaxException;
import java.util.regex.Matcher;

/**
 * The pattern that a unit's number must match as a whole, matched in time linear in the number's
 * length (RE2 syntax).
 *
 * @param text at most 256 characters; its counted repetitions multiply to at most 10 000, since
 *     each is written out when the pattern is compiled
 */
record UnitPattern(String text) {
  private static final int LENGTH = 256;
  private static final long REPETITIONS = 10_000;
  private static final java.util.regex.Pattern COUNTED =
      java.util.regex.Pattern.compile("\\{([0-9]{1,9})(?:,([0-9]{0,9}))?\\}");

  /**
   * @throws IllegalArgumentException when it is no such pattern
   */
  UnitPattern {
    if (text.isEmpty() || text.length() > LENGTH) {
      throw new IllegalArgumentException(
          "the pattern is of " + text.length() + " characters; 1 to " + LENGTH + " are allowed");
    }
    long written = 1;
    for (Matcher m = COUNTED.matcher(text); m.find() && written <= REPETITIONS; ) {
      String most = m.group(2) == null || m.group(2).isEmpty() ? m.group(1) : m.group(2);
      written *= Math.max(1, Long.parseLong(most));
    }
    if (written > REPETITIONS) {
      throw new IllegalArgumentException(
          "the pattern's repetitions multiply to more than "
              + REPETITIONS
              + "; use smaller counts");
    }
    compiled(text);
  }

  boolean matches(String unit) {
    return compiled(text).matches(unit);
  }

  private static Pattern compiled(String text) {
    try {
      return Pattern.compile(text);
    } catch (PatternSyntaxException e) {
      throw new IllegalArgumentException(
          "not a linear-time pattern: "
              + e.getDescription()
              + "; RE2 syntax is allowed, e.g. \"ATR-26-[0-9]{4}\"",
          e);
    } catch (StackOverflowError e) {
      throw new IllegalArgumentException("the pattern is nested too deeply; write it flatter", e);
    }
  }
}
