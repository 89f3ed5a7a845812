package witnessmark.decode;

/** What was received is no event; the message is the reason that goes on record. */
final class Refusal extends Exception {
  private static final long serialVersionUID = 1L;

  Refusal(String reason) {
    super(reason, null, false, false);
  }
}
