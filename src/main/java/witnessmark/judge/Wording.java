package witnessmark.judge;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import witnessmark.entry.Judged;
import witnessmark.entry.Objection;
import witnessmark.entry.Reason;
import witnessmark.torque.Band;
import witnessmark.torque.Direction;
import witnessmark.torque.Torque;
import witnessmark.torque.TorqueEvent;
import witnessmark.torque.Verdict;

/** Says in a sentence or two what was decided and what to do next. */
public final class Wording {
  /** After a second hit: the order of work goes on, and may show that something was skipped. */
  private static final String DUE_STILL =
      ". What was expected is still due; if that is tight, go over those counted as done.";

  private Wording() {}

  /** The same decision with its text. */
  public static Judged told(Judged judged, TorqueEvent event) {
    String where =
        judged
            .fastener()
            .map(f -> f + judged.pass().map(p -> " (" + p + " pass)").orElse(""))
            .map(f -> f + ": ")
            .orElse("");
    String text =
        judged.reason().placed()
            ? where
                + outcome(judged, event)
                + effect(judged)
                + " "
                + why(judged, event)
                + hint(judged)
            : why(judged, event) + " " + outcome(judged, event) + effect(judged);
    return judged.withText(text);
  }

  private static String why(Judged j, TorqueEvent event) {
    return switch (j.reason()) {
      case NEXT_IN_SEQUENCE -> "It was the one fastener due next.";
      case COUNTED_IN_GROUP ->
          "Placed by count: the group may be done in any order and no position came.";
      case NAMED_BY_EVENT -> "The reading itself names it.";
      case NAMED_BY_SCAN -> "A scan just before names it.";
      case ONLY_BAND_THAT_FITS ->
          "It is the only place whose band holds the reading; open as well: " + list(j) + ".";
      case ONLY_ANGLE_THAT_FITS ->
          "It is the only place whose band and angle hold the reading; open as well: "
              + list(j)
              + ".";
      case ONLY_PLACE_FOR_WRENCH ->
          "It is the only open place where " + event.wrench() + " may be used.";
      case HIT_AGAIN -> "It was tight already and was hit again.";
      case HIT_AGAIN_BY_ANGLE -> "It hardly turned, so it was tight before" + DUE_STILL;
      case NOT_REPLACED ->
          "It hardly turned, so what is to be reworked or replaced is still in: undo it first.";
      case HIT_AGAIN_BY_BREAKAWAY ->
          "It began to turn near its peak only, so it was tight before" + DUE_STILL;
      case HIT_AGAIN_BY_TIME ->
          "It came sooner than a hand reaches the next one, so it is the same again" + DUE_STILL;
      case LOOSENED_FOR_REWORK -> "It is the one fastener to be reworked or replaced.";
      case ONLY_ONE_TIGHT -> "It is the only fastener tightened so far.";
      case ASSIGNED_BY_PERSON -> "A person says that it was this one.";
      case NOT_DUE_YET ->
          "It is not due yet: do what is expected first, and tighten it again in its turn.";
      case TIGHT_BEFORE ->
          "It stands for "
              + list(j)
              + ", which was tight before its turn and so was counted as it.";
      case WAITS_FOR_DISPOSITION -> "It waits for a disposition: leave it as it is.";
      case NO_ACTIVE_JOB ->
          "No job is open at this station. Open or resume one, then tighten again or assign the reading.";
      case LATE_FOR_ENDED_JOB ->
          "The job that was open when it happened has ended: a late finding. Tell quality of it.";
      case NO_SUCH_FASTENER ->
          "The job has no fastener "
              + event.fastener().map(f -> "\"" + f + "\"").orElse("of the scanned name")
              + ". Check the position and tighten again, or assign the reading.";
      case JOB_WAITS ->
          "Nothing is to be tightened now: do first what the job waits for (job status says what).";
      case NOTHING_LEFT -> "Every fastener of the job is done. Close the job.";
      case SEVERAL_POSSIBLE ->
          "It could be " + list(j) + ". Say which (assign), or set the reading aside.";
      case NEXT_OR_AGAIN ->
          "It could be the next one, or a tight one hit again: "
              + list(j)
              + ". Say which (assign), or set it aside; scan the position to be sure.";
      case FITS_ELSEWHERE ->
          "It is too much for the expected one and right for another: "
              + list(j)
              + ". Say which (assign); scan the position next time.";
      case LOOSENED_WHICH ->
          j.alternatives().isEmpty()
              ? "Something was loosened, but nothing of this job was tight."
              : "Something was loosened, and it is not known what: "
                  + few(j.alternatives())
                  + ". Say which (assign) before the job can close.";
      case PERHAPS_REPEATED ->
          "Looks like a reading already taken, and the wrench sent no event number to tell. "
              + "Nothing is credited: tighten again, or assign it.";
    };
  }

  /** A reading that is too low for the fastener, and right for others. */
  private static String hint(Judged j) {
    boolean others =
        j.reason() == Reason.NEXT_IN_SEQUENCE
            || j.reason() == Reason.COUNTED_IN_GROUP
            || j.reason() == Reason.ONLY_PLACE_FOR_WRENCH;
    return others
            && j.verdict().equals(Optional.of(Verdict.UNDER_TORQUE))
            && !j.alternatives().isEmpty()
        ? " It would be right for " + list(j) + ": if you were there, scan it first."
        : "";
  }

  private static String outcome(Judged j, TorqueEvent event) {
    String reading =
        event.torque() + j.atFastener().map(t -> " (" + t + " at the fastener)").orElse("");
    String band =
        j.low().isPresent()
            ? " of " + new Band(Torque.parse(j.low().get()), Torque.parse(j.high().orElseThrow()))
            : "";
    String verdict =
        j.verdict()
            .map(
                v ->
                    switch (v) {
                      case IN_BAND -> reading + " is in the band" + band + ".";
                      case UNDER_TORQUE -> reading + " is below the band" + band + ".";
                      case OVER_TORQUE -> reading + " is above the band" + band + ".";
                      case ANGLE_LOW -> angle(j, event) + " is too little" + window(j) + ".";
                      case ANGLE_HIGH -> angle(j, event) + " is too much" + window(j) + ".";
                      case UNDECIDED ->
                          reading + " is too near a limit" + band + " to decide" + guard(j) + ".";
                    })
            .orElse(
                event.direction() == Direction.CCW
                    ? (j.reason().placed() ? "loosened" : "Loosened") + " with " + reading + "."
                    : (j.reason().placed() ? "" : "The reading is ") + reading + ".");
    String objections =
        j.objections().stream().map(o -> objection(o, event)).collect(Collectors.joining(" "));
    return (verdict + " " + objections).strip();
  }

  private static String effect(Judged j) {
    String undone = j.undoes().isEmpty() ? "" : " Pending again with it: " + few(j.undoes()) + ".";
    return switch (j.effect()) {
      case CREDITED -> " Credited.";
      case AGAIN ->
          j.verdict().equals(Optional.of(Verdict.UNDECIDED))
              ? " Not accepted: tighten it again, nearer the target."
              : " Not accepted: tighten it again.";
      case NONCONFORMING ->
          spent(j) + " Nonconforming: stop here, somebody must decide (dispose)." + undone;
      case LOOSENED -> " It is pending again." + undone;
      case RECHECKED -> " It stands as it was.";
      case ASKS, NONE -> " Nothing is credited.";
    };
  }

  /** Why a reading that is not too much makes the fastener nonconforming. */
  private static String spent(Judged j) {
    return j.verdict()
        .map(
            v ->
                switch (v) {
                  case UNDER_TORQUE, ANGLE_LOW, UNDECIDED -> " That was the last try allowed.";
                  case OVER_TORQUE, ANGLE_HIGH, IN_BAND -> "";
                })
        .orElse(" It may be used only once.");
  }

  static String objection(Objection objection, TorqueEvent event) {
    return switch (objection) {
      case WRENCH_NOT_ENROLLED ->
          "Wrench " + event.wrench() + " is not enrolled: use an enrolled one.";
      case NOT_FROM_ITS_SOURCE ->
          event.wrench()
              + " does not report by this way: use it where it belongs, or ask quality"
              + " (wrench bind).";
      case CALIBRATION_NOT_IN_FORCE ->
          "Wrench " + event.wrench() + " had no calibration in force: use another.";
      case OUTSIDE_WRENCH_RANGE ->
          "The reading is outside the range of "
              + event.wrench()
              + ": use a wrench that covers it.";
      case WRENCH_NOT_FOR_THIS_STEP ->
          "The step names other wrenches than " + event.wrench() + ": use one of those.";
      case ANGLE_MISSING ->
          "The step asks for an angle and the wrench sent none: use one that sends it.";
      case WRONG_KIND_OF_WRENCH ->
          "The step asks for another kind of wrench than "
              + event.wrench()
              + ": use one of that kind.";
      case RESOLUTION_TOO_COARSE ->
          event.wrench() + " reads in steps too coarse for this band: use a finer one.";
      case UNCERTAINTY_UNKNOWN ->
          "The step is guarded and the uncertainty of "
              + event.wrench()
              + " is not known: use another.";
      case UNCERTAINTY_TOO_LARGE ->
          "The uncertainty of "
              + event.wrench()
              + " leaves nothing of this band: use a better one.";
    };
  }

  private static String guard(Judged j) {
    return j.guard().map(w -> " (guard band " + w + ")").orElse("");
  }

  private static String angle(Judged j, TorqueEvent event) {
    return j.angleTotal()
        .map(a -> a + " degrees over all pulls")
        .or(() -> event.angle().map(a -> a + " degrees"))
        .orElse("The angle");
  }

  private static String window(Judged j) {
    return Optional.of(j)
        .filter(x -> x.angleLow().isPresent())
        .map(x -> " for " + x.angleLow().get() + " to " + x.angleHigh().orElseThrow() + " degrees")
        .orElse("");
  }

  private static String list(Judged j) {
    return few(j.alternatives());
  }

  private static String few(List<String> names) {
    return names.size() <= 6
        ? String.join(", ", names)
        : String.join(", ", names.subList(0, 6)) + " and " + (names.size() - 6) + " more";
  }
}
