package witnessmark.match;

import java.math.BigDecimal;
import witnessmark.job.Condition;
import witnessmark.torque.TorqueEvent;

/** Whether a reading could be a hit on a fastener that is held tight already. */
final class Held {
  /**
   * A hit may show up to a quarter more than what the fastener is held at: it breaks away above
   * that, and turns on a little. Common practice, no source. It may show any less, for the wrench
   * may stop before anything moves.
   */
  static final BigDecimal SHARE = new BigDecimal("0.8");

  private Held() {}

  /** What a fastener must be held at for a hit to show the reading, in newton metres. */
  static BigDecimal least(TorqueEvent event) {
    return event.torque().newtonMetres().multiply(SHARE);
  }

  /** Whether the fastener has had a pull in the pass, or a later one, that this could repeat. */
  static boolean inPass(Condition condition, int pass, TorqueEvent event) {
    return condition.pull().isPresent()
        && condition.pull().get().pass() >= pass
        && condition.pull().get().held().compareTo(least(event)) >= 0;
  }
}
