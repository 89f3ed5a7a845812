package witnessmark.record;

import java.util.List;
import java.util.OptionalLong;
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
   * @param key the entry that enrolled the key it is signed with; empty where the badge was
   *     believed
   */
  public record Decision(long entry, Entry.Disposed disposed, OptionalLong key) {}
}
