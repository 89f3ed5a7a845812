package wrenchsim.joint;

import static java.lang.Math.max;
import static java.lang.Math.min;

import java.util.Objects;
import java.util.Random;

/**
 * One bolted joint that remembers how tight it is.
 *
 * <p>Every turn draws the same number of random values, so that what a joint does next never
 * depends on which branch it took before.
 */
public final class Joint {
  // Static friction a few per cent above the tightening torque, four fifths of the torque to undo,
  // a cross-thread that binds after a third of the angle, and a hand that moves what is held by
  // less than half: common practice, no source.
  private static final double BREAKAWAY = 0.05;
  private static final double BREAKAWAY_DEVIATION = 0.02;
  private static final double UNDOING = 0.8;
  private static final double UNDOING_DEVIATION = 0.05;
  private static final double BINDS_AFTER = 1.0 / 3;
  private static final double SLACK = 0.5;

  private final Random chance;
  private JointSpec spec;
  private double heldNm;
  private boolean undone;
  private boolean crossed;

  /** A loose joint whose scatter comes from {@code chance} alone. */
  public Joint(JointSpec spec, Random chance) {
    this.spec = Objects.requireNonNull(spec, "spec");
    this.chance = Objects.requireNonNull(chance, "chance");
  }

  /** The joint's state now. */
  public JointState state() {
    if (heldNm == 0) {
      return undone ? JointState.LOOSENED : JointState.LOOSE;
    }
    if (crossed) {
      return JointState.CROSSED;
    }
    if (heldNm < spec.lowNm()) {
      return JointState.SNUG;
    }
    return heldNm <= spec.highNm() ? JointState.TIGHT : JointState.OVERTIGHTENED;
  }

  /** Whether there is anything to loosen. */
  public boolean isHeld() {
    return heldNm > 0;
  }

  /** Whether a hand without a wrench feels that it is not tight for its pass. */
  public boolean isSlack() {
    return heldNm < SLACK * spec.lowNm();
  }

  /**
   * Goes on to a later pass with a higher target; a lower one changes nothing while it is held, for
   * what was made tight stays tight.
   */
  public void face(JointSpec pass) {
    if (!isHeld() || pass.targetNm() > spec.targetNm()) {
      spec = pass;
    }
  }

  /**
   * Tightens until the wrench has felt {@code aimNm}, N·m, above 0. A joint that is as tight
   * already turns a degree or two and shows the torque at which it broke away, which may lie above
   * the aim.
   */
  public Turn tighten(double aimNm) {
    return turn(aimNm, 1);
  }

  /**
   * Tightens with the threads crossed: a joint that is loose binds after a third of the angle; one
   * that is held has its threads engaged, and turns as it would.
   */
  public Turn bind(double aimNm) {
    boolean loose = !isHeld();
    crossed |= loose;
    return turn(aimNm, loose ? BINDS_AFTER : 1);
  }

  private Turn turn(double aimNm, double share) {
    JointState before = state();
    double slope = 1 + spec.scatter() * bounded(chance.nextGaussian());
    double breakawayNm =
        heldNm * (1 + clamp(BREAKAWAY + BREAKAWAY_DEVIATION * chance.nextGaussian(), 0.01, 0.1));
    double windup = spec.rehit().degrees(bounded(chance.nextGaussian()));
    if (heldNm <= spec.snugNm()) {
      heldNm = aimNm;
      double turned = share * slope * spec.degreesBetween(spec.snugNm(), aimNm);
      return new Turn(aimNm, turned, true, before, state());
    }
    if (aimNm <= breakawayNm) {
      // The peak was static friction; the clamped parts hardly moved, so the joint is as it was.
      return new Turn(breakawayNm, windup, true, before, before);
    }
    double turned = windup + slope * spec.degreesBetween(heldNm, aimNm);
    heldNm = aimNm;
    return new Turn(aimNm, turned, true, before, state());
  }

  /**
   * Undoes the joint.
   *
   * @throws IllegalStateException when it is not held, for a wrench feels nothing then
   */
  public Turn loosen() {
    if (!isHeld()) {
      throw new IllegalStateException(
          "the joint is " + state().word() + ": there is nothing to undo");
    }
    JointState before = state();
    double peakNm = heldNm * clamp(UNDOING + UNDOING_DEVIATION * chance.nextGaussian(), 0.6, 0.95);
    double turned = 90 + 90 * chance.nextDouble();
    heldNm = 0;
    undone = true;
    crossed = false;
    return new Turn(peakNm, turned, false, before, state());
  }

  private static double bounded(double gaussian) {
    return clamp(gaussian, -3, 3);
  }

  private static double clamp(double value, double least, double most) {
    return min(most, max(least, value));
  }
}
