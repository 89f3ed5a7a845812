package witnessmark.match;

import java.util.List;
import java.util.OptionalInt;
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
      Placement there = Placement.on(how, fastener, due);
      return ByAngle.breaksOff(condition, due, event) ? there.notCounted() : there;
    }
    if (condition.done() > 0 && Bands.of(last).side(event.torque()) != Side.ABOVE) {
      return Placement.on(Reason.HIT_AGAIN, fastener, last);
    }
    return Placement.on(Reason.NOT_DUE_YET, fastener, due);
  }
}
