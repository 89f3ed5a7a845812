package witnessmark.sight;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import witnessmark.procedure.Layout;
import witnessmark.procedure.Pass;
import witnessmark.procedure.Stage;
import witnessmark.procedure.TightenStep;
import witnessmark.torque.AngleBand;

/**
 * One pass of a group with the weakest wrench that may be used on it.
 *
 * @param ability what that wrench shows
 */
record Case(Layout layout, Stage stage, Ability ability) {
  /**
   * A fastener's earlier pass hides where it breaks away, when it held this share of the least that
   * a tight one may begin to turn at: 0.8 of 0.6 of the torque, as {@code match} decides.
   */
  private static final BigDecimal HIDES = new BigDecimal("0.48");

  static final String POSITION = "each reading has its position";

  TightenStep step() {
    return Layout.step(stage);
  }

  Pass pass() {
    return Layout.pass(stage);
  }

  boolean several() {
    return step().positions().size() > 1;
  }

  /** Whether two different fasteners may be meant. */
  boolean other(Stage there) {
    return !there.step().id().equals(stage.step().id());
  }

  /** Stages of other groups that may be open at the same time. */
  Stream<Stage> together() {
    return layout.tightening().filter(t -> other(t) && layout.together(stage, t));
  }

  /** Those of them on which one wrench may be used as well as here. */
  Stream<Stage> beside() {
    return together().filter(t -> Layout.share(stage, t));
  }

  /** Those of them that take the same torque, too. */
  Stream<Stage> lookAlikes() {
    return beside().filter(t -> layout.alike(stage, t));
  }

  /** Stages other than this one that are not complete before it. */
  Stream<Stage> unfinished() {
    return Stream.concat(together(), later());
  }

  /** Stages that begin only when this one is complete. */
  Stream<Stage> later() {
    return layout.tightening().filter(t -> layout.before(stage, t));
  }

  /** Whether the angle may tell a second hit where a reading is taken for this stage. */
  static boolean angleTells(Ability ability, Stage there) {
    return (ability.angle() || Layout.pass(there).angle().isPresent())
        && recheck(there).signum() > 0;
  }

  static BigDecimal recheck(Stage there) {
    return Layout.step(there).care().telling().recheckAngle();
  }

  /** Whether the window there begins above what a tight one turns. */
  static boolean clear(Stage there) {
    return begins(there, recheck(there));
  }

  /** Whether the window there begins above so many degrees. */
  static boolean begins(Stage there, BigDecimal above) {
    return window(there).filter(w -> w.low().degrees().value().compareTo(above) > 0).isPresent();
  }

  static Optional<AngleBand> window(Stage there) {
    return Layout.pass(there).angle();
  }

  /** Whether both have windows that no angle fits alike. */
  static boolean parted(Stage one, Stage other) {
    Optional<AngleBand> a = window(one);
    Optional<AngleBand> b = window(other);
    return a.isPresent()
        && b.isPresent()
        && (a.get().high().compareTo(b.get().low()) < 0
            || b.get().high().compareTo(a.get().low()) < 0);
  }

  /**
   * Whether the torque at which a tight one begins to turn tells it from the one expected there.
   */
  boolean breakawayTells(Stage there) {
    if (!ability.breakaway() || Layout.pass(there).check()) {
      return false;
    }
    if (there.pass() == 0) {
      return true;
    }
    BigDecimal held =
        Layout.step(there).passes().get(there.pass() - 1).band().high().newtonMetres();
    return held.compareTo(layout.low(there).multiply(HIDES)) < 0;
  }

  /**
   * What shows a hit on a tight one of this stage, at its own torque, while another is expected.
   */
  Visibility secondHit(Stage expected) {
    if (ability.position()) {
      return Visibility.SEEN;
    }
    boolean read = angleTells(ability, expected);
    boolean angle = read && turnsNoFurther(expected);
    boolean breakaway = breakawayTells(expected);
    if (!layout.alike(stage, expected)) {
      boolean either = read && !clear(expected) && layout.reachesAbove(expected, stage);
      boolean asked =
          either || severalWith(expected) || (read || breakaway) && newerConfuses(expected);
      return asked ? Visibility.ASKED : Visibility.SEEN;
    }
    if (Layout.pass(expected).check()) {
      return Visibility.NOT_SEEN;
    }
    boolean contradict = breakaway && read && !angle;
    if (contradict && !refused(expected)) {
      return Visibility.ASKED;
    }
    if (breakaway || angle && clear(expected) || refused(expected)) {
      return newerConfuses(expected) ? Visibility.ASKED : Visibility.SEEN;
    }
    return angle ? Visibility.ASKED : Visibility.NOT_SEEN;
  }

  /**
   * Whether another is open beside the expected one, so that a torque that fits neither is asked.
   */
  private boolean severalWith(Stage expected) {
    return layout
        .tightening()
        .anyMatch(
            t ->
                t != stage
                    && layout.together(expected, t)
                    && !layout.before(t, stage)
                    && Layout.share(stage, t));
  }

  /** Whether one that was pulled since may be taken for the one that was hit. */
  private boolean newerConfuses(Stage expected) {
    return confusing(expected).anyMatch(p -> !layout.before(p, stage));
  }

  /** Others that may be tight by then and be taken for one that is hit at this torque. */
  Stream<Stage> confusing(Stage expected) {
    return layout
        .tightening()
        .filter(p -> p != stage && !layout.before(expected, p))
        .filter(p -> Layout.share(stage, p) && layout.confuses(p, stage));
  }

  /**
   * Whether something is tight when this one is due that a hit at the upper limit could be on.
   *
   * @param held the torque that each is reckoned to hold, newton metres
   */
  boolean tightBefore(Function<Stage, BigDecimal> held) {
    BigDecimal least = layout.high(stage).multiply(Layout.HELD);
    return layout
        .tightening()
        .filter(p -> layout.before(p, stage) && (other(p) || several()))
        .filter(p -> Layout.share(p, stage))
        .anyMatch(p -> !Layout.over(least, stage, held.apply(p), p));
  }

  /** Whether a tight one of this stage turns no further than a tight one there. */
  boolean turnsNoFurther(Stage expected) {
    return expected == stage
        || recheck(stage).signum() > 0 && recheck(stage).compareTo(recheck(expected)) <= 0;
  }

  /** Whether a window there refuses whatever a tight one of this stage turns. */
  boolean refused(Stage expected) {
    return recheck(stage).signum() > 0 && begins(expected, recheck(stage));
  }

  Announced says(Mistake mistake, Visibility visibility, String sentence) {
    return says(mistake, visibility, sentence, "");
  }

  /**
   * @param other what {@code {}} stands for in the pattern
   */
  Announced says(Mistake mistake, Visibility visibility, String pattern, String other) {
    return new Announced(mistake, step().id(), pass().name(), visibility, pattern, other);
  }

  /** Seen, whatever else there is. */
  Announced byPosition(Mistake mistake) {
    return says(mistake, Visibility.SEEN, POSITION);
  }

  /** {@code "pivot" (final)}. */
  static String name(Stage there) {
    return "\"" + there.step().id() + "\" (" + Layout.pass(there).name() + ")";
  }
}
