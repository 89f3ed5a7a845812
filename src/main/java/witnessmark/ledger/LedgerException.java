package witnessmark.ledger;

/**
 * The log cannot be used now. Whether the last append was written is unknown until it has been
 * opened anew.
 */
public class LedgerException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  public LedgerException(String message) {
    super(message);
  }

  public LedgerException(String message, Throwable cause) {
    super(message, cause);
  }
}
