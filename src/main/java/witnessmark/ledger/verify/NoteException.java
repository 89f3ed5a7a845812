package witnessmark.ledger.verify;

/** A signed note or checkpoint is not what it must be; the message says how, in one sentence. */
public sealed class NoteException extends Exception permits OtherKeyException {
  private static final long serialVersionUID = 1L;

  NoteException(String sentence) {
    super(sentence);
  }
}
