package witnessmark.report;

import witnessmark.entry.Reason;

/** The rule behind a reason, and what would have changed the outcome. */
final class Reasoning {
  private Reasoning() {}

  /** The rule that decided, in a sentence. */
  static String rule(Reason reason) {
    return switch (reason) {
      case NEXT_IN_SEQUENCE ->
          "The order of work leaves one fastener, and nothing speaks for another.";
      case COUNTED_IN_GROUP ->
          "In a group of any order one more is counted; which one is not known.";
      case NAMED_BY_EVENT, NAMED_BY_SCAN, ASSIGNED_BY_PERSON ->
          "A named position goes before all else.";
      case ONLY_BAND_THAT_FITS ->
          "Of several open places, the reading lies in the band of one only.";
      case ONLY_ANGLE_THAT_FITS ->
          "Of several open places, torque and angle together fit one only.";
      case ONLY_PLACE_FOR_WRENCH -> "Of several open places, the wrench may be used on one only.";
      case HIT_AGAIN -> "The named fastener is tight on record, so it was hit again.";
      case HIT_AGAIN_BY_ANGLE ->
          "Turned no further than a tight one, and less than a fresh one hardly ever does: hit again.";
      case NOT_REPLACED ->
          "To be reworked or replaced, and turned no further than a tight one: it is as it was.";
      case HIT_AGAIN_BY_BREAKAWAY ->
          "Began to turn at 60 % of its peak or above: a tight one, hit again.";
      case HIT_AGAIN_BY_TIME ->
          "Sooner than a hand reaches the next: the one that this wrench pulled last.";
      case LOOSENED_FOR_REWORK ->
          "Undone right after it was decided: the one fastener to be reworked or replaced.";
      case ONLY_ONE_TIGHT -> "A loosening belongs to the one fastener that was tightened.";
      case NOT_DUE_YET -> "The named fastener waits for others.";
      case WAITS_FOR_DISPOSITION ->
          "The named fastener is nonconforming: nothing counts until somebody decides.";
      case TIGHT_BEFORE ->
          "A pending fastener that was tight was counted under the name of another of its group.";
      case LATE_FOR_ENDED_JOB -> "A job that has ended is never changed by what comes later.";
      case NO_ACTIVE_JOB -> "Without an open job at the station there is nothing to place it on.";
      case NO_SUCH_FASTENER -> "The named position is not in the procedure.";
      case JOB_WAITS -> "Nothing may be tightened before a person has acted.";
      case NOTHING_LEFT -> "Every fastener is done.";
      case SEVERAL_POSSIBLE -> "Several fasteners fit, and a likely one is not good enough.";
      case NEXT_OR_AGAIN ->
          "The next fastener and a tight one both fit, and a likely one is not good enough.";
      case FITS_ELSEWHERE ->
          "Above the band of the expected one and right for another: damage here, or the right work there.";
      case LOOSENED_WHICH ->
          "A loosening is never guessed: a loose one would stay on record as tight.";
      case PERHAPS_REPEATED -> "The same content without a number may be one event sent twice.";
    };
  }

  /** What would have changed the outcome, in a sentence. */
  static String otherwise(Reason reason) {
    return switch (reason) {
      case NEXT_IN_SEQUENCE, ONLY_PLACE_FOR_WRENCH ->
          "a named position; an angle or a breakaway torque as of a tight one.";
      case COUNTED_IN_GROUP ->
          "a position, scanned or sent by the wrench, would have said which one.";
      case NAMED_BY_EVENT, NAMED_BY_SCAN, ASSIGNED_BY_PERSON -> "only another name.";
      case ONLY_BAND_THAT_FITS, ONLY_ANGLE_THAT_FITS ->
          "a named position; a reading that fits another open place as well.";
      case HIT_AGAIN, NOT_DUE_YET -> "another name, or the fastener's turn in the order of work.";
      case HIT_AGAIN_BY_ANGLE -> "a named position; an angle as of a fresh one.";
      case NOT_REPLACED -> "its loosening before, or an angle as of a fresh one.";
      case HIT_AGAIN_BY_BREAKAWAY -> "a named position; a turn that began below 40 % of the peak.";
      case HIT_AGAIN_BY_TIME -> "a named position; an angle; a longer time since the pull before.";
      case LOOSENED_FOR_REWORK, ONLY_ONE_TIGHT ->
          "a named position; a second fastener that could be meant.";
      case WAITS_FOR_DISPOSITION -> "a disposition before it.";
      case TIGHT_BEFORE -> "a position with every reading of the group.";
      case LATE_FOR_ENDED_JOB -> "its arrival before the job was ended.";
      case NO_ACTIVE_JOB -> "a job open at the station.";
      case NO_SUCH_FASTENER -> "a position of this procedure.";
      case JOB_WAITS -> "what the job waits for, done before.";
      case NOTHING_LEFT -> "a fastener that is not done; a reading above its band.";
      case SEVERAL_POSSIBLE -> "a named position; a reading that fits one of them only.";
      case NEXT_OR_AGAIN -> "a named position; an angle that fits one of them only.";
      case FITS_ELSEWHERE -> "a named position; a reading inside the expected band.";
      case LOOSENED_WHICH -> "a named position; fewer fasteners that could be meant.";
      case PERHAPS_REPEATED -> "an event number from the wrench.";
    };
  }
}
