package witnessmark.procedure;

import java.math.BigDecimal;
import java.util.Objects;
import java.util.Optional;

/**
 * The decision rule of a step: whether the uncertainty of the reading is taken into account.
 *
 * @param guard the factor r of a guarded step, whose guard band is w = r·U, U being the expanded
 *     uncertainty (k = 2) of the torque at the fastener; empty for simple acceptance, w = 0
 */
public record Acceptance(Optional<BigDecimal> guard) {
  /** A reading is accepted where it lies within the limits. */
  public static final Acceptance SIMPLE = new Acceptance(Optional.empty());

  /**
   * @throws IllegalArgumentException when the factor is not above 0
   */
  public Acceptance {
    Objects.requireNonNull(guard, "guard");
    if (guard.filter(r -> r.signum() <= 0).isPresent()) {
      throw new IllegalArgumentException("a guard factor is above 0");
    }
  }
}
