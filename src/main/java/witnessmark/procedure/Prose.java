package witnessmark.procedure;

/** Words that people read: printable, not blank, of bounded length. */
final class Prose {
  private Prose() {}

  /**
   * Returns a single line unchanged.
   *
   * @throws IllegalArgumentException when it is blank, too long or not printable
   */
  static String line(String what, String text, int longest) {
    return check(what, text, longest, false);
  }

  /** Like {@link #line}, but line breaks are allowed. */
  static String lines(String what, String text, int longest) {
    return check(what, text, longest, true);
  }

  private static String check(String what, String text, int longest, boolean breaks) {
    if (text.isBlank()) {
      throw new IllegalArgumentException(what + " is blank; write what people should read");
    }
    int length = text.codePointCount(0, text.length());
    if (length > longest) {
      throw new IllegalArgumentException(
          what + " is of " + length + " characters; at most " + longest + " are allowed");
    }
    if (text.codePoints().anyMatch(c -> unprintable(c) && !(breaks && (c == '\n' || c == '\r')))) {
      throw new IllegalArgumentException(
          what + " holds a character that cannot be printed; take it out");
    }
    return text;
  }

  private static boolean unprintable(int c) {
    return Character.isISOControl(c)
        || Character.getType(c) == Character.SURROGATE
        || Character.getType(c) == Character.UNASSIGNED;
  }
}
