package witnessmark.desk;

/** The form of a reason that a person gives: it goes on record, so it must say something. */
final class Because {
  private static final int LONGEST = 500;

  private Because() {}

  /**
   * Returns the text unchanged.
   *
   * @throws IllegalArgumentException when it is blank, of more than one line, or too long
   */
  static String check(String text) {
    if (text.isBlank()
        || text.length() > LONGEST
        || text.codePoints().anyMatch(Character::isISOControl)) {
      throw new IllegalArgumentException(
          "a reason (--because) must be one line of 1 to " + LONGEST + " characters that says why");
    }
    return text;
  }
}
