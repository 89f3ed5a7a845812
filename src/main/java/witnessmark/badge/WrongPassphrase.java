package witnessmark.badge;

/** The passphrase does not open the key, or the file was damaged: the two cannot be told apart. */
public final class WrongPassphrase extends RuntimeException {
  private static final long serialVersionUID = 1L;

  WrongPassphrase(Exception cause) {
    super("the passphrase does not open it", cause);
  }
}
