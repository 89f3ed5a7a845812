package witnessmark.desk;

import java.util.regex.Pattern;

/** The form of a station's name: part of a topic, so nothing that could climb or match others. */
public final class StationName {
  private static final Pattern FORM = Pattern.compile("[A-Za-z0-9._-]{1,64}");

  private StationName() {}

  /** Whether the text may name a station. */
  public static boolean fits(String text) {
    return FORM.matcher(text).matches() && !text.equals(".") && !text.equals("..");
  }

  /**
   * Returns the text unchanged.
   *
   * @throws IllegalArgumentException when it may not name a station
   */
  public static String check(String text) {
    if (!fits(text)) {
      throw new IllegalArgumentException(
          "station \"" + text + "\" is not allowed; use 1 to 64 letters, digits, and . _ -");
    }
    return text;
  }
}
