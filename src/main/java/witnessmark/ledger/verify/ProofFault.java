package witnessmark.ledger.verify;

/** A proof proves nothing; the message says why, in one sentence without its full stop. */
final class ProofFault extends Exception {
  private static final long serialVersionUID = 1L;

  ProofFault(String sentence) {
    super(sentence);
  }
}
