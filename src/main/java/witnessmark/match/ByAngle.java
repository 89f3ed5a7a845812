package witnessmark.match;

import java.math.BigDecimal;
import java.util.Optional;
import witnessmark.job.Condition;
import witnessmark.job.JobState;
import witnessmark.procedure.Pass;
import witnessmark.procedure.Stage;
import witnessmark.procedure.TightenStep;
import witnessmark.torque.Side;
import witnessmark.torque.TorqueEvent;

/** What the angle shows: a tight fastener hardly turns when it is hit again. */
final class ByAngle {
  private ByAngle() {}

  static Sign of(JobState job, int fastener, Stage stage, TorqueEvent event) {
    TightenStep step = (TightenStep) stage.step();
    Pass pass = step.passes().get(stage.pass());
    BigDecimal recheck = step.care().telling().recheckAngle();
    if (event.angle().isEmpty() || recheck.signum() == 0 || pass.check()) {
      return Sign.SILENT;
    }
    BigDecimal angle = event.angle().get().degrees().value();
    Optional<LearntTurn> learnt =
        pass.angle().isPresent() ? Optional.empty() : LearntTurn.of(job, stage);
    boolean little = angle.compareTo(recheck) <= 0;
    if (!little && !plainlyFresh(pass, learnt, angle)) {
      if (overOneThatIsDone(job, fastener, stage, event)) {
        return Sign.EITHER;
      }
      little = TightTurn.reaches(job, event, fastener);
    }
    if (!little && pass.angle().isPresent()) {
      return Sign.FRESH;
    }
    Condition condition = job.condition(fastener);
    if (condition.turned().signum() > 0) {
      return little && tooLittleForTheRest(condition, stage, event) ? Sign.EITHER : Sign.FRESH;
    }
    boolean tooLittle = tooLittle(pass, learnt, angle);
    if (little && Held.inPass(condition, stage.pass(), event)) {
      // The expected one is tight itself. A window refuses it either way; without one, ask.
      return tooLittle && pass.angle().isPresent() ? Sign.FRESH : Sign.EITHER;
    }
    if (little) {
      return tooLittle ? Sign.TIGHT : Sign.EITHER;
    }
    // A fresh one that is let go below its band has turned only a part of the way.
    boolean whole = Bands.side(stage, event.torque()) != Side.BELOW;
    return tooLittle && whole ? Sign.EITHER : Sign.FRESH;
  }

  /** Whether it turned about as far as a fresh one does, so that nothing else need be weighed. */
  private static boolean plainlyFresh(Pass pass, Optional<LearntTurn> learnt, BigDecimal angle) {
    return pass.angle().isPresent()
        ? !tooLittle(pass, learnt, angle)
        : learnt.filter(l -> l.mostOf(angle)).isPresent();
  }

  /** Whether it went above the band, where another of the group is tight and may have got it. */
  private static boolean overOneThatIsDone(
      JobState job, int fastener, Stage stage, TorqueEvent event) {
    return Bands.side(stage, event.torque()) == Side.ABOVE
        && Tight.of(job, event, fastener).newest().isPresent();
  }

  /**
   * Whether earlier pulls that ended too low, and this one, cannot all have been on the fastener:
   * too little is turned now for what was left.
   */
  static boolean breaksOff(Condition condition, Stage stage, TorqueEvent event) {
    BigDecimal recheck = Bands.step(stage).care().telling().recheckAngle();
    return event.angle().isPresent()
        && condition.turned().signum() > 0
        && event.angle().get().degrees().value().compareTo(recheck) <= 0
        && tooLittleForTheRest(condition, stage, event);
  }

  /** Whether a fresh fastener hardly ever turns so little; known from the window, else learnt. */
  private static boolean tooLittle(Pass pass, Optional<LearntTurn> learnt, BigDecimal angle) {
    return pass.angle().isPresent()
        ? angle.compareTo(pass.angle().get().low().degrees().value()) < 0
        : learnt.filter(l -> l.below(angle)).isPresent();
  }

  /**
   * Whether the angle is less than half of what is left to turn after pulls that ended too low, at
   * T1: by proportion at least turned·(T2 − T1)/(T1 − T0), for the turning began at T0 or above.
   */
  private static boolean tooLittleForTheRest(Condition condition, Stage stage, TorqueEvent event) {
    BigDecimal reached = condition.reached();
    BigDecimal since = reached.subtract(began(stage, reached));
    BigDecimal rest = condition.turned().multiply(event.torque().newtonMetres().subtract(reached));
    BigDecimal angle = event.angle().orElseThrow().degrees().value();
    return angle.add(angle).multiply(since).compareTo(rest) < 0;
  }

  /** What an earlier pass left it with at least, from where this pass began to turn it. */
  private static BigDecimal began(Stage stage, BigDecimal reached) {
    if (stage.pass() == 0) {
      return BigDecimal.ZERO;
    }
    BigDecimal low = Bands.step(stage).passes().get(stage.pass() - 1).band().low().newtonMetres();
    return low.compareTo(reached) < 0 ? low : BigDecimal.ZERO;
  }
}
