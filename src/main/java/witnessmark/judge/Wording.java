package witnessmark.judge;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import witnessmark.entry.Judged;
import witnessmark.entry.Objection;
import witnessmark.torque.Band;
import witnessmark.torque.Direction;
import witnessmark.torque.Torque;
import witnessmark.torque.TorqueEvent;

/** Says in a sentence or two what was decided and what to do next. */
public final class Wording {
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
            ? where + outcome(judged, event) + effect(judged) + " " + why(judged, event)
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
      case ONLY_PLACE_FOR_WRENCH ->
          "It is the only open place where " + event.wrench() + " may be used.";
      case HIT_AGAIN -> "It was tight already and was hit again.";
      case LOOSENED_FOR_REWORK -> "It is the one fastener to be reworked or replaced.";
      case ONLY_ONE_TIGHT -> "It is the only fastener tightened so far.";
      case ASSIGNED_BY_PERSON -> "A person says that it was this one.";
      case NOT_DUE_YET ->
          "It is not due yet: do what is expected first, and tighten it again in its turn.";
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

  private static String outcome(Judged j, TorqueEvent event) {
    String reading = event.torque().toString();
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
                      case UNDECIDED -> reading + " is too near a limit" + band + " to decide.";
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
      case AGAIN -> " Not accepted: tighten it again.";
      case NONCONFORMING -> " Nonconforming: stop here, somebody must decide (dispose).";
      case LOOSENED -> " It is pending again." + undone;
      case RECHECKED -> " It stands as it was.";
      case ASKS, NONE -> " Nothing is credited.";
    };
  }

  static String objection(Objection objection, TorqueEvent event) {
    return switch (objection) {
      case WRENCH_NOT_ENROLLED ->
          "Wrench " + event.wrench() + " is not enrolled: use an enrolled one.";
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
    };
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
