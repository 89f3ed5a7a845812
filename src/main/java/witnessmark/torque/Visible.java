package witnessmark.torque;

/**
 * Text of any origin, fit to be shown as a part of one line: what would begin a new line, colour a
 * terminal, move its cursor or turn the order of letters round is written as {@code \\u001B}, which
 * is also how JSON may write it.
 */
public final class Visible {
  private Visible() {}

  /** The text with every hidden character written out. */
  public static String of(String text) {
    int first = 0;
    while (first < text.length() && plain(text.charAt(first))) {
      first++;
    }
    return first == text.length() ? text : written(text, first);
  }

  private static String written(String text, int first) {
    StringBuilder shown = new StringBuilder(text.length() + 16).append(text, 0, first);
    text.substring(first)
        .codePoints()
        .forEach(
            c -> {
              if (hidden(c)) {
                for (char half : Character.toChars(c)) {
                  shown.append(String.format("\\u%04X", (int) half));
                }
              } else {
                shown.appendCodePoint(c);
              }
            });
    return shown.toString();
  }

  /** Nearly all text: one look at each character is enough. */
  private static boolean plain(char c) {
    return c >= ' ' && c <= '~';
  }

  /** Whether a terminal would obey the character instead of showing it, or show nothing. */
  public static boolean hidden(int c) {
    int type = Character.getType(c);
    return type == Character.CONTROL
        || type == Character.FORMAT
        || type == Character.SURROGATE
        || type == Character.PRIVATE_USE
        || type == Character.UNASSIGNED
        || type == Character.LINE_SEPARATOR
        || type == Character.PARAGRAPH_SEPARATOR;
  }
}
