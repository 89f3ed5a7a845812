package witnessmark.match;

import witnessmark.entry.Reason;
import witnessmark.job.JobState;
import witnessmark.procedure.Stage;
import witnessmark.torque.TorqueEvent;

/**
 * What a reading shows of the fastener that is expected, all signs taken together.
 *
 * @param sign what it shows
 * @param again the reason to give where it shows a fastener that was tight
 */
record Evidence(Sign sign, Reason again) {
  static Evidence of(JobState job, int fastener, Stage stage, TorqueEvent event) {
    Sign angle = ByAngle.of(job, fastener, stage, event);
    Sign breakaway = ByBreakaway.of(job.condition(fastener), stage, event);
    boolean byAngle = angle == Sign.TIGHT || breakaway == Sign.SILENT;
    return new Evidence(
        both(angle, breakaway),
        byAngle ? Reason.HIT_AGAIN_BY_ANGLE : Reason.HIT_AGAIN_BY_BREAKAWAY);
  }

  /** Where one is silent or open, the other counts; where they contradict, both could be. */
  private static Sign both(Sign angle, Sign breakaway) {
    if (breakaway == Sign.SILENT || angle == breakaway) {
      return angle;
    }
    return angle == Sign.SILENT || angle == Sign.EITHER ? breakaway : Sign.EITHER;
  }
}
