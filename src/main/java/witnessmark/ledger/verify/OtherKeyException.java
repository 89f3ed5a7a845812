package witnessmark.ledger.verify;

/** A note is signed by another key of the same name. */
final class OtherKeyException extends NoteException {
  private static final long serialVersionUID = 1L;

  private final String signer;

  /**
   * @param signer the id of the key that signed, eight hexadecimal digits
   */
  OtherKeyException(String sentence, String signer) {
    super(sentence);
    this.signer = signer;
  }

  String signer() {
    return signer;
  }
}
