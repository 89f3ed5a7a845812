package witnessmark.sight;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import witnessmark.procedure.Layout;
import witnessmark.procedure.Stage;

/** Too little and too much torque. */
final class Torques {
  private Torques() {}

  static void announce(Case at, List<Announced> said) {
    said.add(under(at));
    said.add(over(at));
  }

  private static Announced under(Case at) {
    Optional<Stage> taker =
        open(at).filter(t -> at.layout().reachesBelow(at.stage(), t)).findFirst();
    if (at.ability().position() || taker.isEmpty()) {
      Optional<Stage> beside = at.beside().findFirst();
      return at.ability().position() || beside.isEmpty()
          ? at.says(Mistake.UNDER, Visibility.SEEN, "it is to be tightened again")
          : at.says(
              Mistake.UNDER,
              Visibility.ASKED,
              "it fits neither this nor {} where both are open",
              Case.name(beside.get()));
    }
    return at.says(
        Mistake.UNDER,
        Visibility.NOT_SEEN,
        "it counts for {} where that is open and takes so little; let one wait, or scan",
        Case.name(taker.get()));
  }

  /** Open at the same time, with a wrench for both, and ready to take a fresh turn. */
  private static Stream<Stage> open(Case at) {
    return at.beside().filter(t -> !(Layout.pass(t).check() && Case.angleTells(at.ability(), t)));
  }

  private static Announced over(Case at) {
    if (at.ability().position()) {
      return at.says(Mistake.OVER, Visibility.SEEN, "the fastener is nonconforming");
    }
    Optional<Stage> taker =
        Stream.concat(
                open(at).filter(t -> at.layout().reachesAbove(at.stage(), t)),
                at.unfinished().filter(at::other).filter(t -> takesTight(at, t)))
            .findFirst();
    if (taker.isPresent()) {
      return at.says(
          Mistake.OVER,
          Visibility.NOT_SEEN,
          "where {} is expected, which takes so much, it counts for that; scan, or use a window",
          Case.name(taker.get()));
    }
    List<Stage> others = at.unfinished().toList();
    boolean turns = at.ability().angle() || at.ability().breakaway();
    boolean asked =
        turns && (at.several() || others.stream().anyMatch(t -> Layout.share(at.stage(), t)))
            || at.ability().angle() && at.tightBefore(at.layout()::high)
            || at.beside().findAny().isPresent()
            || others.stream().anyMatch(t -> Misplaced.fitsElsewhere(at, t));
    return asked
        ? at.says(Mistake.OVER, Visibility.ASKED, "another could be meant, or a tight one was hit")
        : at.says(
            Mistake.OVER,
            Visibility.SEEN,
            "one is nonconforming: the one due, though a tight one may have been hit");
  }

  /** Whether a hit on a tight one, above this band, would be credited there. */
  private static boolean takesTight(Case at, Stage there) {
    if (!Layout.share(at.stage(), there) || !at.layout().reachesAbove(at.stage(), there)) {
      return false;
    }
    boolean tells = Case.angleTells(at.ability(), there) && at.turnsNoFurther(there);
    if (Layout.pass(there).check() || !tells) {
      return Layout.pass(there).check() || !at.refused(there);
    }
    BigDecimal least = at.layout().high(there).multiply(Layout.HELD);
    return !Case.clear(there) && Layout.over(least, there, at.layout().low(at.stage()), at.stage());
  }
}
