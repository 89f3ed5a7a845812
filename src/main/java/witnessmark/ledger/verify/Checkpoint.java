package witnessmark.ledger.verify;

/**
 * A log's signed size and root, as in a C2SP tlog-checkpoint.
 *
 * @see <a href="https://c2sp.org/tlog-checkpoint">c2sp.org/tlog-checkpoint</a>
 */
public final class Checkpoint {
  private final String origin;
  private final long size;
  private final byte[] root;

  private Checkpoint(String origin, long size, byte[] root) {
    this.origin = origin;
    this.size = size;
    this.root = root;
  }

  /**
   * Opens a checkpoint with the verifier key that must have signed it.
   *
   * @param verifierKey as in {@code ledger.pub}
   * @throws NoteException when the note is not such a checkpoint or the key has not signed it
   * @throws IllegalArgumentException when the verifier key is none
   */
  public static Checkpoint open(String note, String verifierKey) throws NoteException {
    return open(note, VerifierKey.parse(verifierKey));
  }

  /** The same with a key already read. */
  public static Checkpoint open(String note, VerifierKey key) throws NoteException {
    origin(note, key.name());
    return of(SignedNote.open(note, key));
  }

  /**
   * What a checkpoint says, whoever may have signed it: enough to tell which key should have.
   *
   * @param origin the log's name
   * @throws NoteException when the note has another form or is of another log
   */
  public static Checkpoint claimed(String note, String origin) throws NoteException {
    origin(note, origin);
    int blank = note.lastIndexOf("\n\n");
    if (blank < 0) {
      throw new NoteException(
          "expected text, a blank line and a signature line, found no blank line");
    }
    return of(note.substring(0, blank + 1));
  }

  /** A note of another log is better told by its origin than by its signature. */
  private static void origin(String note, String expected) throws NoteException {
    String origin = note.substring(0, Math.max(0, note.indexOf('\n')));
    if (!origin.equals(expected)) {
      throw new NoteException("its origin is \"" + origin + "\", expected \"" + expected + "\"");
    }
  }

  private static Checkpoint of(String text) throws NoteException {
    String[] lines = text.split("\n", -1);
    if (lines.length != 4) {
      throw new NoteException(
          "expected three lines of text (origin, size, root), found " + (lines.length - 1));
    }
    byte[] root = ExactBase64.decode(lines[2]);
    if (root == null || root.length != Hashes.LENGTH) {
      throw new NoteException(
          "expected the root as base64 of 32 bytes, found \"" + lines[2] + "\"");
    }
    return new Checkpoint(lines[0], sizeOf(lines[1]), root);
  }

  private static long sizeOf(String line) throws NoteException {
    try {
      if (line.matches("0|[1-9][0-9]*")) {
        return Long.parseLong(line);
      }
    } catch (NumberFormatException e) {
      // Falls to the sentence below: more digits than a log can have entries.
    }
    throw new NoteException(
        "expected the size in decimal without leading zeros, found \"" + line + "\"");
  }

  /** The log's name. */
  public String origin() {
    return origin;
  }

  /** How many entries are signed. */
  public long size() {
    return size;
  }

  /** The root over them, 32 bytes. */
  public byte[] root() {
    return root.clone();
  }
}
