package witnessmark.ledger.verify;

import java.util.Arrays;
import java.util.Base64;

/**
 * Compares the newest checkpoint with the entries. Which key has to have signed it is known when
 * the entries that it signs have been read, for one of them may be a change of the key.
 */
final class SignedRoot {
  private static final String TABLE = "checkpoint";

  private final Findings findings;
  private final KeyChain keys;

  /** Null when there is none that could be one. */
  private final String note;

  /** How many entries the note says to sign. */
  private long claimed;

  /** The note once it was found to be signed; null before and when it is not. */
  private Checkpoint checkpoint;

  private boolean opened;

  /** The root over the first entries, as many as are signed; null until there are so many. */
  private byte[] reached;

  SignedRoot(RawLedger ledger, KeyChain keys, Findings findings) {
    this.findings = findings;
    this.keys = keys;
    this.note = read(ledger);
    this.opened = note == null;
    if (note != null) {
      try {
        claimed = Checkpoint.claimed(note, keys.name()).size();
      } catch (NoteException e) {
        open();
      }
    }
  }

  private String read(RawLedger ledger) {
    try (Table rows =
        new Table(TABLE, Findings.Subject.CHECKPOINT, findings, ledger::checkpoints)) {
      if (!rows.next()) {
        if (!rows.unreadable()) {
          add("there is no row; nothing says how many entries there were, nor which");
        }
        return null;
      }
      String newest = row(rows);
      if (rows.next()) {
        add("there is more than one row; expected the newest checkpoint alone");
      }
      return newest;
    }
  }

  private String row(Table rows) {
    Object id = rows.value(0);
    Object note = rows.value(1);
    if (rows.unreadable()) {
      return null;
    }
    if (!Cells.same(id, 0L)) {
      add("column id holds " + Cells.show(id) + ", expected 0");
    }
    if (!(note instanceof String text)) {
      add("column note holds " + Cells.show(note) + ", expected text in UTF-8");
      return null;
    }
    return text;
  }

  /** Hears of the tree before entry {@code n} comes into it, and once after the last. */
  void before(long n, Tree tree) {
    if (note != null && reached == null && n >= claimed) {
      reached = tree.root();
      open();
    }
  }

  /** Opens the checkpoint by the key that the entries read so far tell, once. */
  void open() {
    if (opened) {
      return;
    }
    opened = true;
    try {
      checkpoint = keys.open(note);
    } catch (NoteException e) {
      add(e.getMessage());
    }
  }

  /** How many entries from 0 are exactly those that were signed; 0 when the signed root differs. */
  long confirmed() {
    boolean same =
        checkpoint != null && reached != null && Arrays.equals(reached, checkpoint.root());
    return same ? checkpoint.size() : 0;
  }

  /**
   * Names what the checkpoint and the entries do not agree on.
   *
   * @param next the number after the last entry's
   * @param linked whether every link agrees and no number is missing
   */
  void report(long next, boolean linked) {
    if (checkpoint == null) {
      return;
    }
    long size = checkpoint.size();
    if (next < size) {
      findings.add(
          Findings.Subject.ENTRY,
          Place.entries(next, size - 1),
          "missing: the checkpoint signs " + size + " entries; the end of the log was cut off");
      return;
    }
    if (next > size) {
      findings.add(
          Findings.Subject.ENTRY,
          Place.entries(size, next - 1),
          confirmed() == size
              ? "appended without the log's key: the checkpoint signs " + size + " entries"
              : "beyond the "
                  + size
                  + " entries that the checkpoint signs: appended without the log's key, or pushed"
                  + " here by a row inserted before");
    }
    if (!Arrays.equals(reached, checkpoint.root())) {
      add(
          "signs the root "
              + base64(checkpoint.root())
              + " over "
              + size
              + " entries, these make "
              + base64(reached)
              + (linked
                  ? " though every link agrees: the history was rewritten as a whole, links and all"
                  : ": the entries named are not those that were signed"));
    }
  }

  private static String base64(byte[] root) {
    return Base64.getEncoder().encodeToString(root);
  }

  private void add(String sentence) {
    findings.add(Findings.Subject.CHECKPOINT, Place.table(TABLE), sentence);
  }
}
