package witnessmark.cli;

/** The command cannot be carried out; carries the exit status that says why. */
final class Refusal extends RuntimeException {
  private static final long serialVersionUID = 1L;
  private final int status;

  Refusal(int status, String message) {
    super(message);
    this.status = status;
  }

  int status() {
    return status;
  }
}
