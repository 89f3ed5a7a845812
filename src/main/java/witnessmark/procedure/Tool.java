package witnessmark.procedure;

import java.math.BigDecimal;
import java.util.Objects;
import java.util.Optional;
import witnessmark.torque.Adapter;
import witnessmark.torque.WrenchKind;

/**
 * What the wrench must be, what sits between it and the fastener, and how far its reading is
 * trusted near a limit.
 *
 * @param kind the kind of wrench, where only one will do
 * @param adapter what moves the fastener off the drive's axis, where anything does
 * @param acceptance the decision rule
 * @param stepsInBand how many of the wrench's resolution steps a band must be wide at least; 0
 *     means that any resolution will do
 */
public record Tool(
    Optional<WrenchKind> kind,
    Optional<Adapter> adapter,
    Acceptance acceptance,
    BigDecimal stepsInBand) {
  /** Any wrench, directly on the fastener. Ten steps: common practice, no source. */
  public static final Tool ANY =
      new Tool(Optional.empty(), Optional.empty(), Acceptance.SIMPLE, BigDecimal.TEN);

  /**
   * @throws IllegalArgumentException when the number of steps is negative
   */
  public Tool {
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(adapter, "adapter");
    Objects.requireNonNull(acceptance, "acceptance");
    if (stepsInBand.signum() < 0) {
      throw new IllegalArgumentException("steps in a band are 0 or more");
    }
  }

  /** The adapter, or {@link Adapter#NONE}, through which a reading becomes a torque there. */
  public Adapter lever() {
    return adapter.orElse(Adapter.NONE);
  }
}
