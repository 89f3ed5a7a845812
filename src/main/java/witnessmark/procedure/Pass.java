package witnessmark.procedure;

import java.math.BigDecimal;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import witnessmark.torque.AngleBand;
import witnessmark.torque.Band;
import witnessmark.torque.Torque;

/**
 * One tightening of every fastener of a group.
 *
 * @param name e.g. {@code snug}, {@code intermediate}, {@code final}
 * @param target the torque to aim at, where the band was given around one
 * @param band lowest and highest acceptable torque
 * @param angle window for the angle, where one is asked for
 * @param after what must be complete before this pass may begin, beside the pass before it
 * @param check whether the pass goes over fasteners that are tight, to see that they are: they
 *     hardly turn then
 * @param order in which order it goes over the group, where that is not the step's
 */
public record Pass(
    String name,
    Optional<Torque> target,
    Band band,
    Optional<AngleBand> angle,
    List<Prerequisite> after,
    boolean check,
    Optional<Order> order) {
  public Pass {
    after = List.copyOf(after);
    Objects.requireNonNull(order, "order");
  }

  /** A pass in the step's order. */
  public Pass(
      String name,
      Optional<Torque> target,
      Band band,
      Optional<AngleBand> angle,
      List<Prerequisite> after,
      boolean check) {
    this(name, target, band, angle, after, check, Optional.empty());
  }

  /** Target, or the middle of the band, in newton metres. */
  public BigDecimal aim() {
    return target
        .map(Torque::newtonMetres)
        .orElseGet(
            () ->
                band.low()
                    .newtonMetres()
                    .add(band.high().newtonMetres())
                    .divide(BigDecimal.valueOf(2)));
  }
}
