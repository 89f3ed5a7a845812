package witnessmark.wrench;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/** How a wrench's calibration stands at a moment. */
public enum Standing {
  IN_FORCE,
  DUE_SOON,
  NOT_IN_FORCE;

  /** Soon, by operations: this share or less is left. */
  private static final long LITTLE = 10;

  /**
   * How it stands.
   *
   * @param uses where its readings are counted
   * @param soon time before the due date that is soon
   */
  public static Standing of(Wrench wrench, Optional<Uses> uses, Instant now, Duration soon) {
    if (!wrench.calibratedAt(now)) {
      return NOT_IN_FORCE;
    }
    boolean near = wrench.due().isBefore(now.plus(soon));
    boolean few = uses.filter(u -> u.left() <= u.operations() / LITTLE).isPresent();
    return near || few ? DUE_SOON : IN_FORCE;
  }
}
