package witnessmark.torque;

/**
 * The form every name of a thing or person has: 1 to 64 printable characters, no blank at an end.
 */
public final class Label {
  private Label() {}

  /**
   * Returns the text unchanged.
   *
   * @throws IllegalArgumentException when it has not the form; {@code what} names it in the message
   */
  public static String check(String what, String text) {
    if (plain(text)) {
      return text;
    }
    boolean printable =
        text.codePoints()
            .noneMatch(
                c ->
                    Character.isISOControl(c)
                        || Character.getType(c) == Character.FORMAT
                        || Character.getType(c) == Character.SURROGATE
                        || Character.getType(c) == Character.LINE_SEPARATOR
                        || Character.getType(c) == Character.PARAGRAPH_SEPARATOR
                        || Character.getType(c) == Character.UNASSIGNED);
    int length = text.codePointCount(0, text.length());
    if (!printable || length < 1 || length > 64 || !text.equals(text.strip())) {
      throw new IllegalArgumentException(
          what + " must be 1 to 64 printable characters without blanks at the ends");
    }
    return text;
  }

  /** Whether it is a label of visible ASCII characters alone, as nearly all are. */
  private static boolean plain(String text) {
    int length = text.length();
    for (int i = 0; i < length; i++) {
      if (text.charAt(i) <= ' ' || text.charAt(i) > '~') {
        return false;
      }
    }
    return length >= 1 && length <= 64;
  }
}
