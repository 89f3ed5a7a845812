package witnessmark.procedure;

import java.math.BigDecimal;
import java.util.List;
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
 */
public record Pass(
    String name,
    Optional<Torque> target,
    Band band,
    Optional<AngleBand> angle,
    List<Prerequisite> after,
    boolean check) {
  public Pass {
    after = List.copyOf(after);
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
