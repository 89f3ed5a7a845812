package witnessmark.procedure;

import java.util.List;
import java.util.Optional;
import witnessmark.torque.Side;
import witnessmark.torque.Torque;

/**
 * A fastener, or a group of identical ones, to be tightened in one or more passes.
 *
 * @param positions the fasteners' names within the step, e.g. {@code 1}, {@code 2}; a fastener's
 *     full name is {@code id/position}
 * @param order in which order within the group, where a pass has none of its own
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

  /** Where the torque that a reading means at the fastener lies beside the band of a pass. */
  public Side side(int pass, Torque reading) {
    return care.tool().lever().side(passes.get(pass).band(), reading);
  }

  /** The working order of a pass. */
  public Order order(int pass) {
    return passes.get(pass).order().orElse(order);
  }

  /** The full name of the fastener at an index into {@link #positions}. */
  public String fastener(int index) {
    return id + "/" + positions.get(index);
  }
}
