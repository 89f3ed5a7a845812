package witnessmark.job;

import java.util.Optional;
import witnessmark.torque.Verdict;

/**
 * What made a fastener nonconforming.
 *
 * @param entry the entry that did
 * @param pass the pass it was judged against
 * @param verdict of the reading; empty where the fastener was loosened and may be used only once
 * @param hand the badge of whose reading it was, where that is on record
 * @param loose whether the fastener, or something that it depends on, is loose since
 */
public record Flaw(
    long entry, int pass, Optional<Verdict> verdict, Optional<String> hand, boolean loose) {

  /** Whether it was turned further than allowed, so that it may be damaged. */
  public boolean overtightened() {
    return verdict.filter(v -> v == Verdict.OVER_TORQUE || v == Verdict.ANGLE_HIGH).isPresent();
  }

  Flaw loosened() {
    return new Flaw(entry, pass, verdict, hand, true);
  }
}
