package witnessmark.ledger;

/** A log does not go on from an earlier checkpoint; the message says how that shows. */
public final class RewrittenException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  RewrittenException(String message) {
    super(message);
  }
}
