package witnessmark.match;

import java.util.List;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import witnessmark.entry.Reason;
import witnessmark.job.Condition;
import witnessmark.job.JobState;
import witnessmark.job.Pull;
import witnessmark.procedure.Stage;
import witnessmark.procedure.TightenStep;
import witnessmark.torque.Direction;
import witnessmark.torque.Side;
import witnessmark.torque.TorqueEvent;

/** Places an event whose fastener is named. */
final class Named {
  private Named() {}

  static Placement of(JobState job, TorqueEvent event, String name, Reason how) {
    OptionalInt found = job.plan().fastener(name);
    if (found.isEmpty()) {
      return Placement.nowhere(Reason.NO_SUCH_FASTENER, List.of());
    }
    int fastener = found.getAsInt();
    Condition condition = job.condition(fastener);
    int passes = job.plan().stepOf(fastener).passes().size();
    Stage last = job.plan().stage(fastener, Tight.last(condition));
    if (event.direction() == Direction.CCW) {
      OptionalInt counted =
          hardlyBegun(condition) ? counted(job, fastener, 0) : OptionalInt.empty();
      return counted.isPresent()
          ? standsFor(job, counted.getAsInt(), name)
          : Placement.on(how, fastener, last);
    }
    if (condition.nonconforming()) {
      return Placement.on(
          Reason.WAITS_FOR_DISPOSITION,
          fastener,
          job.plan().stage(fastener, condition.nonconformingPass()));
    }
    if (condition.done() == passes) {
      return Placement.on(Reason.HIT_AGAIN, fastener, last);
    }
    Stage due = job.plan().stage(fastener, condition.done());
    if (Tight.unreplaced(job, fastener, event)) {
      return Placement.on(Reason.NOT_REPLACED, fastener, last);
    }
    if (job.openStages().contains(due) && job.next(due).contains(fastener)) {
      OptionalInt counted =
          hardlyTurned(job, fastener, due, event)
              ? counted(job, fastener, due.pass())
              : OptionalInt.empty();
      return counted.isPresent()
          ? standsFor(job, counted.getAsInt(), name)
          : continued(Placement.on(how, fastener, due), condition, due, event);
    }
    if (condition.done() > 0 && Bands.side(last, event.torque()) != Side.ABOVE) {
      return Placement.on(Reason.HIT_AGAIN, fastener, last);
    }
    return Placement.on(Reason.NOT_DUE_YET, fastener, due);
  }

  /** Nothing to undo, or no more than what a pull left that ended too low and came by count. */
  private static boolean hardlyBegun(Condition condition) {
    boolean low = condition.reached().signum() > 0;
    boolean byCount = condition.pull().filter(Pull::observed).isEmpty();
    return condition.done() == 0
        && !condition.nonconforming()
        && !condition.rework()
        && (low ? byCount : condition.pull().isEmpty() && !condition.touched());
  }

  private static Placement continued(
      Placement there, Condition condition, Stage due, TorqueEvent event) {
    return ByAngle.breaksOff(condition, due, event) ? there.notCounted() : there;
  }

  private static boolean hardlyTurned(JobState job, int fastener, Stage due, TorqueEvent event) {
    Sign sign = Evidence.of(job, fastener, due, event).sign();
    boolean allowed =
        event
            .angle()
            .flatMap(a -> Bands.pass(due).angle().map(w -> w.side(a) == Side.INSIDE))
            .orElse(false);
    return (sign == Sign.TIGHT || (sign == Sign.EITHER && !allowed)) && !Bands.pass(due).check();
  }

  /**
   * The newest other one of the group that has the pass by count: its name may stand for any of
   * them.
   */
  private static OptionalInt counted(JobState job, int fastener, int pass) {
    TightenStep step = job.plan().stepOf(fastener);
    int first = job.plan().first(step);
    return IntStream.range(first, first + step.positions().size())
        .filter(f -> f != fastener && job.condition(f).stands(pass))
        .filter(f -> job.condition(f).pull().filter(p -> !p.observed()).isPresent())
        .reduce((a, b) -> Tight.newer(job, a, b) ? a : b);
  }

  private static Placement standsFor(JobState job, int counted, String name) {
    Stage stage = job.plan().stage(counted, Tight.last(job.condition(counted)));
    return Placement.on(Reason.TIGHT_BEFORE, counted, stage, List.of(name));
  }
}
