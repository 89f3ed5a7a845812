package wrenchsim.joint;

/**
 * What truly happened when a joint was turned once.
 *
 * @param peakNm the highest torque applied, N·m
 * @param degrees the angle turned, from snug on when tightening; never negative
 * @param tightening whether it was turned clockwise
 * @param before the joint before it
 * @param after the joint after it
 */
public record Turn(
    double peakNm, double degrees, boolean tightening, JointState before, JointState after) {

  public Turn {
    if (!(peakNm > 0) || !(degrees >= 0)) {
      throw new IllegalArgumentException(
          "a turn needs a torque above 0 N.m and an angle of at least 0 degrees, but got %s N.m, %s degrees"
              .formatted(peakNm, degrees));
    }
    java.util.Objects.requireNonNull(before, "before");
    java.util.Objects.requireNonNull(after, "after");
  }
}
