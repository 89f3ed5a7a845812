package wrenchsim.joint;

import java.util.Objects;

/**
 * What a joint is made for and how it answers to torque: a straight line of torque over angle from
 * snug to target.
 *
 * @param targetNm the torque asked for, N·m, above 0
 * @param lowNm the lowest acceptable torque, N·m, above 0 and at most the target
 * @param highNm the highest acceptable torque, N·m, at least the target
 * @param degrees the angle from snug to target, above 0: the joint's hardness. About {@value #HARD}
 *     is a hard joint, about {@value #SOFT} (a full turn) a soft one: common practice, no source
 * @param scatter the relative standard deviation of that angle from one tightening to the next,
 *     from friction and settling; 0 to 0.3
 * @param rehit how far it turns when it is tight and hit again
 */
public record JointSpec(
    double targetNm, double lowNm, double highNm, double degrees, double scatter, Rehit rehit) {

  /** A hard joint's angle from snug to target, degrees. */
  public static final double HARD = 30;

  /** A soft joint's angle from snug to target, degrees. */
  public static final double SOFT = 360;

  /** Snug as a share of the target torque: common practice, no source. */
  private static final double SNUG_SHARE = 0.1;

  /** A joint that turns a degree or two when it is hit again. */
  public JointSpec(double targetNm, double lowNm, double highNm, double degrees, double scatter) {
    this(targetNm, lowNm, highNm, degrees, scatter, Rehit.USUAL);
  }

  public JointSpec {
    Objects.requireNonNull(rehit, "rehit");
    if (!(lowNm > 0 && lowNm <= targetNm && targetNm <= highNm)) {
      throw new IllegalArgumentException(
          "a joint needs 0 < low <= target <= high in N.m, but got low %s, target %s, high %s"
              .formatted(lowNm, targetNm, highNm));
    }
    checkAngle(degrees, scatter);
  }

  /**
   * @throws IllegalArgumentException for an angle or a scatter that no joint has
   */
  public static void checkAngle(double degrees, double scatter) {
    if (!(degrees > 0)) {
      throw new IllegalArgumentException(
          "the angle from snug to target must be above 0 degrees, but is " + degrees);
    }
    if (!(scatter >= 0 && scatter <= 0.3)) {
      throw new IllegalArgumentException(
          "the scatter of a joint must be 0 to 0.3, but is " + scatter);
    }
  }

  /** The torque at which all parts touch and the angle begins to count, N·m. */
  public double snugNm() {
    return SNUG_SHARE * targetNm;
  }

  /** The angle by which the torque rises from one value to another above snug, degrees. */
  public double degreesBetween(double fromNm, double toNm) {
    return Math.max(0, degrees * (toNm - fromNm) / (targetNm - snugNm()));
  }
}
