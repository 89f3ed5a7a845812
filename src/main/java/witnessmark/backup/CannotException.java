package witnessmark.backup;

/** No backup is made, or none is restored; the message says why and what to do. */
public final class CannotException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final boolean damaged;

  CannotException(String message) {
    this(message, false);
  }

  CannotException(String message, boolean damaged) {
    super(message);
    this.damaged = damaged;
  }

  /** Whether it is because the log does not verify; else something is in the way. */
  public boolean damaged() {
    return damaged;
  }
}
