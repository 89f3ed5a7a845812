package witnessmark.match;

import java.math.BigDecimal;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import witnessmark.entry.Reason;
import witnessmark.job.Condition;
import witnessmark.job.JobState;
import witnessmark.procedure.Stage;
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
    Stage last = job.plan().stage(fastener, Math.max(0, condition.done() - 1));
    if (event.direction() == Direction.CCW) {
      return Placement.on(how, fastener, last);
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
    if (job.openStages().contains(due) && job.next(due).contains(fastener)) {
      boolean counted = hardlyTurned(job, fastener, due, event) && counted(job, fastener, due);
      return Placement.on(counted ? Reason.TIGHT_BEFORE : how, fastener, due);
    }
    if (condition.done() > 0 && Bands.side(last, event.torque()) != Side.ABOVE) {
      return Placement.on(Reason.HIT_AGAIN, fastener, last);
    }
    return Placement.on(Reason.NOT_DUE_YET, fastener, due);
  }

  private static boolean hardlyTurned(JobState job, int fastener, Stage due, TorqueEvent event) {
    BigDecimal recheck = Bands.step(due).care().telling().recheckAngle();
    return event.angle().filter(a -> a.degrees().value().compareTo(recheck) <= 0).isPresent()
        && Evidence.of(job, fastener, due, event).sign() != Sign.FRESH
        && !Bands.pass(due).check();
  }

  /** Whether another of the group has this pass by count: its name may stand for any of them. */
  private static boolean counted(JobState job, int fastener, Stage due) {
    int first = job.plan().first(Bands.step(due));
    return IntStream.range(first, first + Bands.step(due).positions().size())
        .filter(f -> f != fastener)
        .mapToObj(job::condition)
        .anyMatch(c -> c.stands(due.pass()) && c.pull().filter(p -> !p.observed()).isPresent());
  }
}
