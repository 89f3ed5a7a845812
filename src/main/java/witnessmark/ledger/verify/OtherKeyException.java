package witnessmark.ledger.verify;

/** A note is signed by another key of the same name. */
final class OtherKeyException extends NoteException {
  private static final long serialVersionUID = 1L;

  OtherKeyException(String sentence) {
    super(sentence);
  }
}
