package witnessmark.ledger.verify;

import java.util.Arrays;
import java.util.Base64;
import java.util.Comparator;
import java.util.List;

/**
 * Compares checkpoints that somebody kept with the entries as they are now, and names the first
 * that contradicts them: those after it contradict them as well.
 */
final class KeptRoots {
  private final VerifierKey given;
  private final Findings findings;
  private final List<Root> roots;

  /** The first that the tree has not grown to. */
  private int next;

  private static final class Root {
    private final Kept kept;
    private final long size;

    /** The root over as many first entries as it signs; null until there are so many. */
    private byte[] reached;

    Root(Kept kept, long size) {
      this.kept = kept;
      this.size = size;
    }
  }

  KeptRoots(List<Kept> kept, VerifierKey given, Findings findings) {
    this.given = given;
    this.findings = findings;
    this.roots =
        kept.stream()
            .map(k -> new Root(k, claimed(k)))
            .sorted(Comparator.comparingLong(r -> r.size))
            .toList();
  }

  /** What it says to sign; 0 where it is none, so that it is named first. */
  private long claimed(Kept kept) {
    try {
      return Checkpoint.claimed(kept.note(), given.name()).size();
    } catch (NoteException e) {
      return 0;
    }
  }

  /** Hears of the tree before entry {@code n} comes into it, and once after the last. */
  void before(long n, Tree tree) {
    while (next < roots.size() && n >= roots.get(next).size) {
      roots.get(next++).reached = tree.root();
    }
  }

  /**
   * Names the first that does not agree with the entries.
   *
   * @param entries how many there are
   * @param keys those of the log
   */
  void report(long entries, KeyChain keys) {
    for (int i = 0; i < roots.size(); i++) {
      Root root = roots.get(i);
      String fault = fault(root, entries, keys);
      if (fault != null) {
        int more = roots.size() - i - 1;
        findings.add(
            Findings.Subject.CHECKPOINT,
            Place.table(root.kept.name()),
            fault + (more == 0 ? "" : "; " + more + " more that sign as much or more stand after"));
        return;
      }
    }
  }

  private static String fault(Root root, long entries, KeyChain keys) {
    Checkpoint kept;
    try {
      kept = keys.open(root.kept.note());
    } catch (NoteException e) {
      return "cannot be compared: " + e.getMessage();
    }
    if (root.reached == null) {
      return "signs "
          + kept.size()
          + " entries, the log has "
          + entries
          + ": its end was cut off since";
    } else if (!Arrays.equals(root.reached, kept.root())) {
      return "signs the root "
          + base64(kept.root())
          + " over the first "
          + kept.size()
          + " entries, these make "
          + base64(root.reached)
          + ": history was rewritten since";
    }
    return null;
  }

  private static String base64(byte[] root) {
    return Base64.getEncoder().encodeToString(root);
  }
}
