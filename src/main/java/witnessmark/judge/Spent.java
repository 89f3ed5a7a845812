package witnessmark.judge;

import java.util.OptionalInt;
import witnessmark.job.Condition;
import witnessmark.job.JobState;
import witnessmark.match.Placement;
import witnessmark.procedure.Rework;

/** Whether a fastener may not simply be tightened again. */
final class Spent {
  private Spent() {}

  /** Loosened after it was tightened, well or badly, though it may be used only once. */
  static boolean byLoosening(JobState job, Placement placement) {
    return rework(job, placement).singleUse() && condition(job, placement).pulled();
  }

  /** This failure is the last that its step allows. */
  static boolean byTrying(JobState job, Placement placement) {
    OptionalInt allowed = rework(job, placement).tries();
    int pass = placement.stage().orElseThrow().pass();
    return allowed.isPresent() && condition(job, placement).tries(pass) + 1 >= allowed.getAsInt();
  }

  private static Rework rework(JobState job, Placement placement) {
    return job.plan().stepOf(placement.fastener().getAsInt()).care().rework();
  }

  private static Condition condition(JobState job, Placement placement) {
    return job.condition(placement.fastener().getAsInt());
  }
}
