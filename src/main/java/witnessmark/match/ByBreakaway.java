package witnessmark.match;

import java.math.BigDecimal;
import witnessmark.job.Condition;
import witnessmark.procedure.Pass;
import witnessmark.procedure.Stage;
import witnessmark.procedure.TightenStep;
import witnessmark.torque.TorqueEvent;

/**
 * What the torque shows at which the turning began: a loose fastener turns at once, a tight one
 * only near the torque it is held at.
 */
final class ByBreakaway {
  /**
   * Shares of the peak from which it was tight, and below which it was not: common practice, no
   * source.
   */
  private static final BigDecimal TIGHT = new BigDecimal("0.6");

  private static final BigDecimal LOOSE = new BigDecimal("0.4");

  private ByBreakaway() {}

  static Sign of(Condition expected, Stage stage, TorqueEvent event) {
    Pass pass = ((TightenStep) stage.step()).passes().get(stage.pass());
    if (event.breakaway().isEmpty() || pass.check()) {
      return Sign.SILENT;
    }
    BigDecimal began = event.breakaway().get().newtonMetres();
    BigDecimal peak = event.torque().newtonMetres();
    if (began.compareTo(peak.multiply(LOOSE)) < 0) {
      return Sign.FRESH;
    }
    if (began.compareTo(peak.multiply(TIGHT)) < 0) {
      return Sign.SILENT;
    }
    // One that earlier pulls have left held begins to turn there, which is nothing new.
    boolean asHeld =
        !expected.rework()
            && expected.pull().isPresent()
            && expected.pull().get().held().compareTo(began.multiply(Held.SHARE)) >= 0;
    return asHeld ? Sign.SILENT : Sign.TIGHT;
  }
}
