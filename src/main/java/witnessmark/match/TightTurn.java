package witnessmark.match;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Optional;
import witnessmark.job.Condition;
import witnessmark.job.JobState;
import witnessmark.procedure.Pass;
import witnessmark.procedure.Stage;
import witnessmark.procedure.TightenStep;
import witnessmark.torque.TorqueEvent;

/**
 * How far a fastener that is held tight turns at most when it is hit again: by what the procedure
 * says, and where the hit goes above what it is held at, by that share of a fresh one's turn by
 * which the torque rises, whole·(T − held)/(T − T0).
 *
 * <p>T0 is where a turn begins to count: in a first pass a quarter of T at most (common practice,
 * no source), else where the pass before ended.
 */
final class TightTurn {
  private static final BigDecimal BEGINS = new BigDecimal("0.25");
  private static final BigDecimal LATEST = new BigDecimal("0.9");
  private static final MathContext UP = new MathContext(16, RoundingMode.UP);

  private TightTurn() {}

  /** Degrees at most, for a fastener that was made tight in a stage. */
  static BigDecimal most(JobState job, Stage stage, BigDecimal held, TorqueEvent event) {
    BigDecimal still = Bands.step(stage).care().telling().recheckAngle();
    BigDecimal torque = event.torque().newtonMetres();
    Optional<BigDecimal> whole = held.compareTo(torque) < 0 ? whole(job, stage) : Optional.empty();
    if (whole.isEmpty()) {
      return still;
    }
    BigDecimal rise = torque.multiply(BigDecimal.ONE.subtract(begins(stage)));
    return still.add(whole.get().multiply(torque.subtract(held)).divide(rise, UP));
  }

  /**
   * Whether the event turned no further than another of the group that it may have hit again.
   *
   * @param but the fastener that is expected, which is not meant here
   */
  static boolean reaches(JobState job, TorqueEvent event, int but) {
    BigDecimal angle = event.angle().orElseThrow().degrees().value();
    BigDecimal least = Held.least(event);
    TightenStep step = job.plan().stepOf(but);
    int first = job.plan().first(step);
    BigDecimal[] loosest = new BigDecimal[step.passes().size()];
    for (int f = first; f < first + step.positions().size(); f++) {
      Condition condition = job.condition(f);
      if (f != but && Tight.couldBe(condition, least)) {
        BigDecimal held = condition.pull().orElseThrow().held();
        int pass = Tight.last(condition);
        loosest[pass] = loosest[pass] == null ? held : loosest[pass].min(held);
      }
    }
    for (int pass = 0; pass < loosest.length; pass++) {
      // of those made tight in one pass, the one that is held the least turns the most
      if (loosest[pass] != null
          && angle.compareTo(most(job, job.plan().stage(but, pass), loosest[pass], event)) <= 0) {
        return true;
      }
    }
    return false;
  }

  /** How far a fresh one turns at most. */
  private static Optional<BigDecimal> whole(JobState job, Stage stage) {
    Pass pass = Bands.pass(stage);
    return pass.angle().isPresent()
        ? pass.angle().map(w -> w.high().degrees().value())
        : LearntTurn.of(job, stage).map(LearntTurn::most);
  }

  /** T0 as a share of T. */
  private static BigDecimal begins(Stage stage) {
    if (stage.pass() == 0) {
      return BEGINS;
    }
    BigDecimal before =
        Bands.step(stage).passes().get(stage.pass() - 1).band().high().newtonMetres();
    return before.divide(Bands.pass(stage).band().low().newtonMetres(), UP).min(LATEST);
  }
}
