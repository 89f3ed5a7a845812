package witnessmark.desk;

/** What scanned codes that are commands begin with; nothing else may be called so. */
public final class ScannerCommands {
  /** No position of a procedure can begin with it either, since those have no colon. */
  public static final String PREFIX = "wm:";

  private ScannerCommands() {}

  /**
   * @throws IllegalArgumentException when a scanner could not tell the text from a command; {@code
   *     what} names it in the message
   */
  static void notOne(String what, String text) {
    if (text.startsWith(PREFIX)) {
      throw new IllegalArgumentException(
          what + " must not begin with " + PREFIX + ", which begins the commands of scanners");
    }
  }
}
