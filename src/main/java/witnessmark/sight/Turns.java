package witnessmark.sight;

import java.math.BigDecimal;
import java.util.List;
import witnessmark.procedure.Pass;
import witnessmark.procedure.Stage;

/** What only the turn could show. */
final class Turns {
  private Turns() {}

  static void announce(Case at, List<Announced> said) {
    if (at.pass().check()) {
      said.add(looseAtCheck(at));
      return;
    }
    if (at.stage().pass() == 0) {
      said.add(crossThreaded(at));
    }
    said.add(tightBefore(at));
    List<Pass> passes = at.step().passes();
    boolean last = passes.stream().skip(at.stage().pass() + 1).allMatch(Pass::check);
    if (last) {
      said.add(
          at.says(
              Mistake.MISSING_WASHER,
              Visibility.NOT_SEEN,
              at.pass().angle().isPresent()
                  ? "seen only where it takes the angle out of the window; have it confirmed"
                  : "no torque tells it; have it confirmed in an attest step"));
    }
  }

  private static Announced crossThreaded(Case at) {
    boolean window = Case.begins(at.stage(), BigDecimal.ZERO);
    Visibility visibility = window ? early(at) : Visibility.NOT_SEEN;
    String sentence =
        switch (visibility) {
          case SEEN -> "it turns less than the window asks for";
          case ASKED -> "it turns less than the window asks for, as one that is tight would";
          case NOT_SEEN ->
              window
                  ? "where another group that takes the torque is open, too, it may count for that"
                  : at.ability().angle()
                      ? "the first of a group has nothing to be compared with; an angle window"
                          + " shows it"
                      : "no torque tells it; an angle window shows it";
        };
    return at.says(Mistake.CROSS_THREADED, visibility, sentence);
  }

  /** What shows a turn below the window. */
  private static Visibility early(Case at) {
    if (at.ability().position()) {
      return Visibility.SEEN;
    }
    Visibility alone = at.ability().breakaway() ? Visibility.ASKED : told(at);
    return at.lookAlikes()
        .map(t -> refuses(t, at) ? Visibility.ASKED : Visibility.NOT_SEEN)
        .reduce(alone, Visibility::weaker);
  }

  private static boolean refuses(Stage there, Case at) {
    return Case.window(there)
        .filter(w -> w.low().compareTo(at.pass().angle().orElseThrow().low()) >= 0)
        .isPresent();
  }

  private static Announced tightBefore(Case at) {
    Visibility visibility = visibility(at);
    String sentence =
        switch (visibility) {
          case SEEN -> "it hardly turns, is not credited and stays due";
          case ASKED -> "it hardly turns, as a second hit on another would";
          case NOT_SEEN ->
              at.ability().angle()
                  ? "with nothing else tight, a small turn is credited; a window above"
                      + " recheck-angle shows it"
                  : "the torque it was brought to is not on record; an angle window shows it";
        };
    return at.says(Mistake.TIGHT_BEFORE, visibility, sentence);
  }

  private static Visibility visibility(Case at) {
    return at.ability().position()
        ? alone(at)
        : at.lookAlikes()
            .map(t -> Case.clear(t) ? Visibility.ASKED : Visibility.NOT_SEEN)
            .reduce(alone(at), Visibility::weaker);
  }

  /** Where no other group that takes the torque is open beside it. */
  private static Visibility alone(Case at) {
    boolean angle = Case.angleTells(at.ability(), at.stage());
    if (angle && Case.clear(at.stage())) {
      return told(at);
    }
    if (at.ability().position() || !at.tightBefore(at.layout()::low)) {
      return Visibility.NOT_SEEN;
    }
    if (at.breakawayTells(at.stage())) {
      return told(at);
    }
    return angle ? Visibility.ASKED : Visibility.NOT_SEEN;
  }

  /** Asked, where what is tight beside it takes another torque. */
  private static Visibility told(Case at) {
    if (at.ability().position()) {
      return Visibility.SEEN;
    }
    boolean confused = at.confusing(at.stage()).findAny().isPresent();
    return confused ? Visibility.ASKED : Visibility.SEEN;
  }

  private static Announced looseAtCheck(Case at) {
    boolean told =
        at.ability().angle()
            && (at.pass().angle().isPresent() || Case.recheck(at.stage()).signum() > 0);
    return told
        ? at.says(
            Mistake.LOOSE_AT_CHECK,
            Visibility.SEEN,
            "it turns further than a tight one, and somebody must decide")
        : at.says(
            Mistake.LOOSE_AT_CHECK,
            Visibility.NOT_SEEN,
            "the check tightens it and shows no more; an angle would show that it was loose");
  }
}
