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

  static Judged told(Judged judged, TorqueEvent event) {
    return told(judged, event, List.of());
  }

  /** The same decision with its text, led by further sentences. */
  public static Judged told(Judged judged, TorqueEvent event, List<String> before) {
    String text =
        (String.join(" ", before) + " " + place(judged, event) + " " + outcome(judged, event))
            .strip();
    return new Judged(
        judged.fastener(),
        judged.pass(),
        judged.reason(),
        judged.alternatives(),
        judged.objections(),
        judged.verdict(),
        judged.low(),
        judged.high(),
        judged.angleLow(),
        judged.angleHigh(),
        judged.angleTotal(),
        judged.effect(),
        judged.undoes(),
        text);
  }

  private static String place(Judged j, TorqueEvent event) {
    String where =
        j.fastener().map(f -> f + j.pass().map(p -> " (" + p + " pass)").orElse("")).orElse("");
    return switch (j.reason()) {
      case NEXT_IN_SEQUENCE -> where + " was the one fastener due next.";
      case COUNTED_IN_GROUP ->
          where + " is credited by count: its group may be done in any order and no position came.";
      case NAMED_BY_EVENT -> "The reading itself names " + where + ".";
      case NAMED_BY_SCAN -> "A scan just before names " + where + ".";
      case ONLY_BAND_THAT_FITS ->
          where
              + " is the only place whose band holds this reading; open as well: "
              + list(j)
              + ".";
      case ONLY_PLACE_FOR_WRENCH ->
          where + " is the only open place where " + event.wrench() + " may be used.";
      case HIT_AGAIN -> where + " was tight already and was hit again.";
      case LOOSENED_FOR_REWORK -> where + " is the one fastener to be reworked or replaced.";
      case ONLY_ONE_TIGHT -> where + " is the only fastener tightened so far.";
      case ASSIGNED_BY_PERSON -> "A person says it was " + where + ".";
      case NOT_DUE_YET ->
          where
              + " is not due yet. Do what is expected first; it must be tightened again in its turn.";
      case WAITS_FOR_DISPOSITION -> where + " waits for a disposition: leave it as it is.";
      case NO_ACTIVE_JOB ->
          "No job is open at this station. Open or resume one, then tighten again or assign the reading.";
      case NO_SUCH_FASTENER ->
          "The job has no fastener "
              + event.fastener().map(f -> "\"" + f + "\"").orElse("of the scanned name")
              + ". Check the position and tighten again, or assign the reading.";
      case JOB_WAITS ->
          "Nothing is to be tightened now: the job waits for a person (job status says for what).";
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
                    ? "Loosened with " + reading + "."
                    : "The reading is " + reading + ".");
    String objections =
        j.objections().stream().map(o -> objection(o, event)).collect(Collectors.joining(" "));
    return (verdict + " " + objections).strip() + effect(j);
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
      case WRENCH_NOT_FOR_THIS_STEP -> "The step names other wrenches than " + event.wrench() + ".";
      case ANGLE_MISSING -> "The step asks for an angle and the wrench sent none.";
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
