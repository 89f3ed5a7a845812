package witnessmark.ledger.verify;

/** A signed note or checkpoint is not what it must be; the message says how, in one sentence. */
public final class NoteException extends Exception {
  private static final long serialVersionUID = 1L;

  NoteException(String sentence) {
    super(sentence);
  }
}
