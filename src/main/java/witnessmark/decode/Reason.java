package witnessmark.decode;

import witnessmark.torque.Visible;

/** The form of the sentence that says why bytes were refused. */
final class Reason {
  private static final int LONGEST = 500;
  private static final int SHOWN = 40;

  private Reason() {}

  /** Returns the reason unchanged, or throws when it is not one line of 1 to 500 characters. */
  static String check(String reason) {
    if (reason.isEmpty() || reason.length() > LONGEST || !printable(reason)) {
      throw new IllegalArgumentException(
          "a reason must be one line of 1 to " + LONGEST + " printable characters");
    }
    return reason;
  }

  private static boolean printable(String text) {
    return text.codePoints().noneMatch(Visible::hidden);
  }

  /** The received text in quotes, fit for a reason: its first 40 characters, hidden ones as ?. */
  static String shown(String text) {
    StringBuilder shown = new StringBuilder("\"");
    text.codePoints().limit(SHOWN).forEach(c -> shown.appendCodePoint(Visible.hidden(c) ? '?' : c));
    boolean cut = text.codePoints().skip(SHOWN).findFirst().isPresent();
    return shown.append(cut ? "\u2026\"" : "\"").toString();
  }
}
