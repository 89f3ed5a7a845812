package witnessmark.record;

import java.util.List;
import witnessmark.entry.Entry;

/**
 * A nonconformity: the reading that made a fastener nonconforming, and what was decided about it.
 *
 * @param fastener its full name
 * @param attempt the reading
 * @param decisions those that name it, oldest first
 * @param open whether somebody still has to decide
 */
public record Deviation(String fastener, Attempt attempt, List<Decision> decisions, boolean open) {
  public Deviation {
    decisions = List.copyOf(decisions);
  }

  /**
   * A disposition.
   *
   * @param entry its number
   * @param signature what stands behind it
   */
  public record Decision(long entry, Entry.Disposed disposed, Signature signature) {}
}
