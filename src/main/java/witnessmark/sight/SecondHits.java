package witnessmark.sight;

import java.util.List;
import java.util.stream.Stream;
import witnessmark.procedure.Layout;
import witnessmark.procedure.Pass;
import witnessmark.procedure.Stage;

/** Tight fasteners hit again, and what that hides. */
final class SecondHits {
  private SecondHits() {}

  static void announce(Case at, List<Announced> said) {
    said.add(
        at.says(
            Mistake.SKIP,
            Visibility.SEEN,
            "it stays pending, and the job cannot close before it is done"));
    if (at.several()) {
      said.add(hiddenSkip(at));
    }
    said.add(doubleHit(at));
    if (at.several() && !at.pass().check()) {
      said.add(afterUnder(at));
    }
  }

  private static Announced hiddenSkip(Case at) {
    Visibility own = at.secondHit(at.stage());
    boolean elsewhere = at.lookAlikes().anyMatch(t -> at.secondHit(t) != Visibility.SEEN);
    Visibility visibility = elsewhere ? own.weaker(Visibility.ASKED) : own;
    return at.says(
        Mistake.HIDDEN_SKIP, visibility, hidden(at, visibility) + mended(at, visibility));
  }

  private static String hidden(Case at, Visibility visibility) {
    if (at.ability().position()) {
      return Case.POSITION;
    }
    if (visibility == Visibility.SEEN) {
      return told(at);
    }
    if (visibility == Visibility.ASKED) {
      if (Case.clear(at.stage()) || at.breakawayTells(at.stage())) {
        return "where another group is open or was pulled since, it may be on that as well";
      }
      return at.pass().angle().isPresent()
          ? "the window begins at or below recheck-angle: a turn of " + turns(at) + " fits both"
          : "a turn of " + turns(at) + " may be either's until the group has shown far more";
    }
    if (at.pass().check()) {
      return "a tight one is what the check expects: only a position with each reading shows it";
    }
    return at.ability().angle()
        ? "recheck-angle is 0, so that no angle tells a second hit; state how far a tight one turns"
        : "the torque is the same; an angle or a position with each reading would show it";
  }

  private static String told(Case at) {
    return Case.angleTells(at.ability(), at.stage()) && Case.clear(at.stage())
        ? "a turn of " + turns(at) + " is below the window, so that the skipped one stays due"
        : "it begins to turn near its peak, so that the skipped one stays due";
  }

  private static String turns(Case at) {
    return Case.recheck(at.stage()).toPlainString() + " degrees or less";
  }

  /** What a later pass makes of one that this pass left out unseen. */
  private static String mended(Case at, Visibility visibility) {
    if (visibility != Visibility.NOT_SEEN) {
      return "";
    }
    List<Pass> passes = at.step().passes();
    if (at.stage().pass() + 1 < passes.size()) {
      return passes.get(at.stage().pass() + 1).check()
          ? checked(at)
          : ". The pass after it tightens the skipped one all the same";
    }
    return at.pass().check() ? "" : ", a check pass in another order would mend it";
  }

  private static String checked(Case at) {
    int check = at.stage().pass() + 1;
    return at.step().order(check).sequence().equals(at.step().order(check - 1).sequence())
        ? ". The check mends it, unless hidden the same way: give it another order"
        : ". The check, in its other order, tightens it all the same";
  }

  private static Announced doubleHit(Case at) {
    Stream<Stage> own = at.several() ? Stream.of(at.stage()) : Stream.empty();
    List<Stage> takers =
        Stream.concat(own, at.unfinished()).filter(t -> Layout.share(at.stage(), t)).toList();
    Visibility visibility =
        takers.stream().map(at::secondHit).reduce(Visibility.SEEN, Visibility::weaker);
    if (visibility == Visibility.SEEN) {
      return at.says(Mistake.DOUBLE_HIT, visibility, "it is told from the next one, or fits none");
    }
    Stage taker =
        takers.stream().filter(t -> at.secondHit(t) == visibility).findFirst().orElseThrow();
    String next = taker == at.stage() ? "the next of the group" : Case.name(taker);
    String tells =
        visibility == Visibility.ASKED
            ? "whether it was on {} is asked where the reading leaves it open"
            : "it counts for {}; at best a reading too many shows in the end";
    return at.says(Mistake.DOUBLE_HIT, visibility, tells + soon(taker, visibility), next);
  }

  private static String soon(Stage taker, Visibility visibility) {
    return visibility == Visibility.ASKED
        ? ""
        : Layout.step(taker)
            .care()
            .telling()
            .secondsBetween()
            .map(s -> ". Seen only if it comes within " + s.toPlainString() + " s")
            .orElse("; seconds-between would show one that comes too soon");
  }

  private static Announced afterUnder(Case at) {
    return at.ability().position()
        ? at.byPosition(Mistake.AGAIN_AFTER_UNDER)
        : at.says(
            Mistake.AGAIN_AFTER_UNDER,
            Visibility.NOT_SEEN,
            at.ability().angle()
                ? "asked only where much was left to turn; little left looks alike. Finish one"
                    + " before the next, or scan it"
                : "it counts as the rest of the pull. Finish one before the next, or scan it");
  }
}
