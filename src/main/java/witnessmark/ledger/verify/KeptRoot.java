package witnessmark.ledger.verify;

import java.util.Arrays;
import java.util.Base64;

/** Compares a checkpoint that somebody kept with the entries as they are now. */
final class KeptRoot {
  private static final String KEPT = "the checkpoint that was kept";

  /** Null when nobody kept one. */
  private final Checkpoint kept;

  private final Findings findings;

  /** The root over as many first entries as it signs; null until there are so many. */
  private byte[] reached;

  KeptRoot(Checkpoint kept, Findings findings) {
    this.kept = kept;
    this.findings = findings;
  }

  /** Hears of the tree before entry {@code n} comes into it, and once after the last. */
  void before(long n, Tree tree) {
    if (kept != null && reached == null && n >= kept.size()) {
      reached = tree.root();
    }
  }

  /**
   * Names what it and the entries do not agree on.
   *
   * @param next the number after the last entry's
   */
  void report(long next) {
    if (kept == null) {
      return;
    }
    if (reached == null) {
      add("signs " + kept.size() + " entries, the log has " + next + ": its end was cut off since");
    } else if (!Arrays.equals(reached, kept.root())) {
      add(
          "signs the root "
              + Base64.getEncoder().encodeToString(kept.root())
              + " over the first "
              + kept.size()
              + " entries, these make "
              + Base64.getEncoder().encodeToString(reached)
              + ": history was rewritten since");
    }
  }

  private void add(String sentence) {
    findings.add(Findings.Subject.CHECKPOINT, Place.table(KEPT), sentence);
  }
}
