package witnessmark.ledger.verify;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Follows the links from row to row and keeps where they break. After a break it goes on from the
 * stored link, so that a bad entry does not make every later one look bad.
 */
final class Chain {
  /** Breaks beyond this many are named without asking whether rows were moved. */
  static final int REMEMBERED = 256;

  private static final int RECENT = 64;

  private final Hashes hashes;
  private final byte[] expected = new byte[Hashes.LENGTH];
  private final byte[] stored = new byte[Hashes.LENGTH];
  private final byte[][] recent = new byte[RECENT][Hashes.LENGTH];
  private final List<Break> breaks = new ArrayList<>();
  private final List<Long> beyond = new ArrayList<>();
  private byte[] firstTail = new byte[Hashes.LENGTH];
  private long firstTailN = -1;
  private long last = -1;
  private long rows;
  private long broken;

  Chain(Hashes hashes) {
    this.hashes = hashes;
  }

  /**
   * Takes the next row.
   *
   * @param n above the number before it
   * @param link as stored, 32 bytes
   */
  void add(long n, byte[] leaf, byte[] link) {
    hashes.link(stored, leaf, expected);
    boolean gap = n != last + 1;
    if (gap || !Arrays.equals(expected, link)) {
      broken(n, leaf, link, gap);
    }
    System.arraycopy(link, 0, stored, 0, Hashes.LENGTH);
    System.arraycopy(link, 0, recent[(int) (rows % RECENT)], 0, Hashes.LENGTH);
    last = n;
    rows++;
  }

  private void broken(long n, byte[] leaf, byte[] link, boolean gap) {
    Break before = breaks.isEmpty() || gap ? null : breaks.get(breaks.size() - 1);
    boolean run = before != null && before.n == last;
    if (run && linksOnly(before, leaf, link)) {
      return;
    }
    broken++;
    if (broken > REMEMBERED) {
      beyond(n);
      return;
    }
    closeSegment();
    Break found = new Break(n, leaf.clone(), link.clone(), expected.clone(), gap);
    if (run) {
      hashes.link(before.recomputed, leaf, found.recomputed);
    }
    // The stretch of rows just before this one that it does not know: they may be insertions.
    for (int back = 2; !gap && back <= Math.min(rows + 1, RECENT); back++) {
      if (follows(linkBack(back), leaf, link)) {
        found.unknownBefore = back - 1;
        break;
      }
    }
    breaks.add(found);
  }

  /** Whether this row shows that the broken rows right before it have their bytes still. */
  private boolean linksOnly(Break before, byte[] leaf, byte[] link) {
    if (follows(before.expected, leaf, link)) {
      before.linkOnly = true;
      return true;
    }
    if (!follows(before.recomputed, leaf, link)) {
      return false;
    }
    for (int i = breaks.size() - 1, n = 0; i >= 0 && breaks.get(i).n == before.n - n; i--, n++) {
      breaks.get(i).linkOnly = true;
    }
    return true;
  }

  private void beyond(long n) {
    if (beyond.isEmpty()) {
      closeSegment();
    }
    if (beyond.size() < REMEMBERED) {
      beyond.add(n);
    }
  }

  /** The link stored {@code back} rows before the row to come; 32 zero bytes before the first. */
  private byte[] linkBack(int back) {
    return back > rows ? new byte[Hashes.LENGTH] : recent[(int) ((rows - back) % RECENT)];
  }

  private void closeSegment() {
    if (breaks.isEmpty()) {
      firstTail = stored.clone();
      firstTailN = last;
    } else {
      Break open = breaks.get(breaks.size() - 1);
      open.tail = stored.clone();
      open.tailN = last;
    }
  }

  private boolean follows(byte[] before, byte[] leaf, byte[] link) {
    byte[] made = new byte[Hashes.LENGTH];
    hashes.link(before, leaf, made);
    return Arrays.equals(made, link);
  }

  boolean agrees() {
    return breaks.isEmpty();
  }

  /**
   * Names what is behind the breaks.
   *
   * @param confirmed how many entries from 0 the signed root confirms
   */
  void report(Findings findings, long confirmed) {
    if (breaks.isEmpty()) {
      return;
    }
    if (broken <= REMEMBERED) {
      closeSegment();
    }
    for (Break at : breaks) {
      at.follows = segmentBefore(at);
    }
    for (Break at : breaks) {
      if (counts(at.n, confirmed)) {
        at.report(findings, confirmed, belongsAt(at, 0));
      }
    }
    for (long n : beyond) {
      if (counts(n, confirmed)) {
        findings.add(Findings.Subject.ENTRY, Place.entry(n), Break.notFrom(n));
      }
    }
    long more = broken - breaks.size() - beyond.size();
    if (more > 0 && counts(beyond.get(beyond.size() - 1), confirmed)) {
      findings.add(
          Findings.Subject.ENTRY,
          Place.entries(beyond.get(beyond.size() - 1) + 1, last),
          more + " more of these do not follow from the entry before them");
    }
  }

  /**
   * Whether a break says anything: what stands beyond a confirmed end was appended, links or no.
   */
  private static boolean counts(long n, long confirmed) {
    return confirmed == 0 || n < confirmed;
  }

  /** Which segment's end this row was made from: -1 for none, 0 for the rows before any break. */
  private int segmentBefore(Break at) {
    if (follows(firstTail, at.leaf, at.link)) {
      return 0;
    }
    for (int i = 0; i < breaks.size(); i++) {
      Break other = breaks.get(i);
      if (other != at && other.tail != null && follows(other.tail, at.leaf, at.link)) {
        return i + 1;
      }
    }
    return -1;
  }

  /** Where the row was when its link was made, as far as the links tell; else where it is. */
  private long belongsAt(Break at, int depth) {
    if (at.follows < 0 || depth > REMEMBERED) {
      return at.n;
    }
    if (at.follows == 0) {
      return firstTailN + 1;
    }
    Break before = breaks.get(at.follows - 1);
    return belongsAt(before, depth + 1) + (before.tailN - before.n) + 1;
  }
}
