package wrenchsim.shop;

import java.util.Objects;
import java.util.Optional;
import wrenchsim.joint.JointSpec;
import wrenchsim.joint.Rehit;
import wrenchsim.wire.Expected;

/**
 * How the joints of a place answer to torque.
 *
 * @param degrees from snug to target; without it, the middle of the published angle window, so that
 *     the parts fit the procedure, or else that of a hard joint
 * @param scatter the relative standard deviation of that angle, 0 to 0.3
 * @param rehit how far a tight one turns when it is hit again
 */
public record JointKind(Optional<Double> degrees, double scatter, Rehit rehit) {
  /** Common practice, no source. */
  public static final double USUAL_SCATTER = 0.05;

  /** Joints that fit the procedure. */
  public static final JointKind USUAL = new JointKind(Optional.empty(), USUAL_SCATTER, Rehit.USUAL);

  public JointKind {
    Objects.requireNonNull(degrees, "degrees");
    Objects.requireNonNull(rehit, "rehit");
    JointSpec.checkAngle(degrees.orElse(JointSpec.HARD), scatter);
  }

  /** A joint of this kind for what is asked there. */
  JointSpec spec(Expected like) {
    return new JointSpec(
        like.targetNm(),
        like.lowNm(),
        like.highNm(),
        degrees.or(like::angle).orElse(JointSpec.HARD),
        scatter,
        rehit);
  }
}
