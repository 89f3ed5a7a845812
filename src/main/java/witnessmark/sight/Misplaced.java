package witnessmark.sight;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import witnessmark.procedure.Layout;
import witnessmark.procedure.Stage;

/** Other fasteners than those due. */
final class Misplaced {
  private Misplaced() {}

  static void announce(Case at, List<Announced> said) {
    if (at.several()) {
      said.add(exchanged(at));
    }
    weakest(at, at.together(), t -> wrongGroup(at, t))
        .ifPresent(t -> said.add(wrongGroup(at, t, wrongGroup(at, t))));
    weakest(at, early(at), t -> tooEarly(at, t))
        .ifPresent(t -> said.add(tooEarly(at, t, tooEarly(at, t))));
    wrongPlace(at).ifPresent(said::add);
  }

  private static Optional<Stage> weakest(
      Case at, Stream<Stage> stages, Function<Stage, Visibility> shows) {
    return stages.reduce((a, b) -> shows.apply(b).compareTo(shows.apply(a)) > 0 ? b : a);
  }

  private static Announced exchanged(Case at) {
    return at.ability().position()
        ? at.byPosition(Mistake.EXCHANGED)
        : at.says(
            Mistake.EXCHANGED,
            Visibility.NOT_SEEN,
            "the count stays right, but names are those of the order; a scan names the one pulled");
  }

  private static Visibility wrongGroup(Case at, Stage there) {
    if (at.ability().position()) {
      return Visibility.SEEN;
    }
    if (!at.layout().alike(at.stage(), there) || Case.parted(at.stage(), there)) {
      return thirdAlike(at, there) ? Visibility.ASKED : Visibility.SEEN;
    }
    return Layout.share(at.stage(), there) ? Visibility.ASKED : Visibility.NOT_SEEN;
  }

  /** Whether a third group may be open that takes the same torque as the other. */
  private static boolean thirdAlike(Case at, Stage there) {
    return at.together()
        .filter(t -> at.layout().together(there, t) && Layout.share(there, t))
        .anyMatch(t -> at.layout().alike(there, t) && !Case.parted(there, t));
  }

  private static Announced wrongGroup(Case at, Stage there, Visibility visibility) {
    String sentence =
        switch (visibility) {
          case SEEN ->
              at.ability().position()
                  ? Case.POSITION
                  : "torque or angle fits one of the groups only";
          case ASKED -> "{} may be open, too, and another takes the same torque; let one wait";
          case NOT_SEEN ->
              "with this group's wrench it counts here: only that parts it from {}; let one wait, or"
                  + " scan";
        };
    return says(at, Mistake.WRONG_GROUP, visibility, sentence, there);
  }

  /** Later stages with other fasteners; a check finds them tight, which is a second hit. */
  private static Stream<Stage> early(Case at) {
    return at.later().filter(t -> at.other(t) || at.several()).filter(t -> !Layout.pass(t).check());
  }

  private static Visibility tooEarly(Case at, Stage there) {
    if (at.ability().position() || Case.parted(at.stage(), there)) {
      return Visibility.SEEN;
    }
    if (at.layout().alike(at.stage(), there)) {
      return Visibility.NOT_SEEN;
    }
    return fitsElsewhere(at, there) ? Visibility.ASKED : Visibility.SEEN;
  }

  /** Whether a torque above this band is asked about because it is right for a pass there. */
  static boolean fitsElsewhere(Case at, Stage there) {
    boolean mayBeNext = there.pass() == 0 || at.other(there) || at.stage().pass() < there.pass();
    return mayBeNext
        && Layout.share(at.stage(), there)
        && at.layout().reachesAbove(at.stage(), there);
  }

  private static Announced tooEarly(Case at, Stage there, Visibility visibility) {
    String sentence =
        switch (visibility) {
          case SEEN ->
              at.ability().position() ? Case.POSITION : "its torque or angle is wrong here";
          case ASKED -> "its torque is above this band and right for {}";
          case NOT_SEEN ->
              "{} takes the same torque, so that it counts here; a position would show it";
        };
    return says(at, Mistake.TOO_EARLY, visibility, sentence, there);
  }

  /** Names the other where it is what hides the mistake. */
  private static Announced says(
      Case at, Mistake mistake, Visibility visibility, String pattern, Stage there) {
    return visibility == Visibility.SEEN
        ? at.says(mistake, visibility, pattern)
        : at.says(mistake, visibility, pattern, Case.name(there));
  }

  private static Optional<Announced> wrongPlace(Case at) {
    Optional<Stage> other =
        at.unfinished()
            .filter(at::other)
            .filter(t -> !Layout.share(at.stage(), t) || !at.layout().alike(at.stage(), t))
            .findFirst();
    return other.map(
        t -> {
          if (at.ability().position()) {
            return at.byPosition(Mistake.WRONG_PLACE);
          }
          if (at.pass().check() && Case.angleTells(at.ability(), at.stage())) {
            return at.says(Mistake.WRONG_PLACE, Visibility.SEEN, "it turns too far for the check");
          }
          return at.says(
              Mistake.WRONG_PLACE,
              Visibility.NOT_SEEN,
              "it counts here, as one of {} would; a position shows it, or at its own turn an angle",
              Case.name(t));
        });
  }
}
