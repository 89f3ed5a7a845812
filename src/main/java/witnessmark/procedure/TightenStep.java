package witnessmark.procedure;

import java.util.List;
import java.util.Optional;

/**
 * A fastener, or a group of identical ones, to be tightened in one or more passes.
 *
 * @param positions the fasteners' names within the step, e.g. {@code 1}, {@code 2}; a fastener's
 *     full name is {@code id/position}
 * @param order in which order within the group
 * @param passes at least one; all of the group does a pass before the next pass begins
 * @param joint what is known of the joint, for people and for the sanity checks
 * @param wrenches serial numbers allowed here; empty means any enrolled wrench
 * @param care what else binds the work
 */
public record TightenStep(
    String id,
    String title,
    Optional<List<Prerequisite>> after,
    List<String> positions,
    Order order,
    List<Pass> passes,
    Joint joint,
    List<String> wrenches,
    Criticality criticality,
    Care care,
    Optional<String> note,
    Optional<String> picture)
    implements Step {
  public TightenStep {
    after = after.map(List::copyOf);
    positions = List.copyOf(positions);
    passes = List.copyOf(passes);
    wrenches = List.copyOf(wrenches);
  }

  /** The full name of the fastener at an index into {@link #positions}. */
  public String fastener(int index) {
    return id + "/" + positions.get(index);
  }
}
