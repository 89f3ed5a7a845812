package witnessmark.trial;

import witnessmark.entry.Judged;
import wrenchsim.truth.Happening;

/**
 * What was really done, behind one reading on record.
 *
 * @param outOfTurn whether the order of work waited for a decision on another then
 * @param late whether the reading came late
 * @param first what was decided when it came
 * @param asked whether a person was asked for its place
 */
record Done(Happening happening, boolean outOfTurn, boolean late, Judged first, boolean asked) {
  Done askedAbout() {
    return new Done(happening, outOfTurn, late, first, true);
  }

  /** The bolt that was turned. */
  String place() {
    return happening.work().fastener().orElse("");
  }
}
