package witnessmark.ledger.verify;

/** A row whose link is not made from the link of the row before it. */
final class Break {
  final long n;
  final byte[] leaf;
  final byte[] link;

  /** The link its bytes and the stored link before it make. */
  final byte[] expected;

  /** The same from the links that the broken rows right before it should have. */
  final byte[] recomputed;

  /** Whether rows are missing before it, so that nothing can be said about its link. */
  final boolean gap;

  /** Whether the next row was made from the link this row should have. */
  boolean linkOnly;

  /** How many rows before it stand between it and the row it was made from; 0 when unknown. */
  int unknownBefore;

  /** The segment whose last row it was made from, -1 when there is none. */
  int follows = -1;

  /** The last row before the next break, and its link. */
  long tailN;

  byte[] tail;

  Break(long n, byte[] leaf, byte[] link, byte[] expected, boolean gap) {
    this.n = n;
    this.leaf = leaf;
    this.link = link;
    this.expected = expected;
    this.recomputed = expected.clone();
    this.gap = gap;
  }

  void report(Findings findings, long confirmed, long belongsAt) {
    if (linkOnly || n < confirmed) {
      add(findings, Place.entry(n), "its link was changed; its bytes are as they were linked");
    } else if (belongsAt != n) {
      moved(findings, belongsAt);
    } else if (follows < 0 && unknownBefore > 0) {
      add(
          findings,
          Place.entries(n - unknownBefore, n - 1),
          "inserted: entry "
              + n
              + " was made "
              + (n == unknownBefore
                  ? "as the first of the log"
                  : "to follow entry " + (n - unknownBefore - 1)));
    } else if (follows < 0 && !gap) {
      add(findings, Place.entry(n), notFrom(n));
    }
  }

  private void moved(Findings findings, long belongsAt) {
    long length = tailN - n;
    add(
        findings,
        Place.entries(n, tailN),
        "moved: made as "
            + Place.entries(belongsAt, belongsAt + length)
            + " by the links; rows were swapped, reordered, inserted or renumbered");
  }

  static String notFrom(long n) {
    return (n == 0
            ? "its link is not the one of a first entry"
            : "its link does not follow from entry " + (n - 1))
        + " and its bytes: its bytes or link were changed, or an entry before it was removed";
  }

  private static void add(Findings findings, Place place, String sentence) {
    findings.add(Findings.Subject.ENTRY, place, sentence);
  }
}
