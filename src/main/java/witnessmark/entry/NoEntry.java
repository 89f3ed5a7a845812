package witnessmark.entry;

/** Bytes that are no entry this program knows. */
public final class NoEntry extends IllegalArgumentException {
  private static final long serialVersionUID = 1L;

  NoEntry(String message, Throwable cause) {
    super(message, cause);
  }
}
