package witnessmark.decode;

import com.google.re2j.Pattern;
import com.google.re2j.PatternSyntaxException;

/** Compiles the patterns of a profile. */
final class ProfilePattern {
  static final int LONGEST = 1000;

  private ProfilePattern() {}

  /**
   * The compiled pattern.
   *
   * @throws IllegalArgumentException when it is no pattern, or longer than 1000 characters
   */
  static Pattern compile(String text) {
    if (text.length() > LONGEST) {
      throw new IllegalArgumentException(
          "a pattern of " + text.length() + " characters is longer than " + LONGEST);
    }
    try {
      return Pattern.compile(text);
    } catch (PatternSyntaxException e) {
      throw new IllegalArgumentException(
          "not a pattern: " + e.getDescription() + " at \"" + e.getPattern() + "\"", e);
    }
  }
}
