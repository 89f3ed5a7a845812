package wrenchsim.joint;

/**
 * How far a tight joint turns when it is hit again: the wind-up of wrench and socket and a little
 * creep, normally distributed, never below 0.
 *
 * @param mean the mean, degrees, 0 to 90
 * @param deviation the standard deviation, degrees, 0 to 90
 */
public record Rehit(double mean, double deviation) {

  /** A degree or two: common practice, no source. */
  public static final Rehit USUAL = new Rehit(1.5, 0.5);

  public Rehit {
    if (!(mean >= 0 && mean <= 90 && deviation >= 0 && deviation <= 90)) {
      throw new IllegalArgumentException(
          "the angle of a second hit has a mean and a deviation of 0 to 90 degrees, but got %s and %s"
              .formatted(mean, deviation));
    }
  }

  /** The angle for a standard normal value. */
  double degrees(double gaussian) {
    return Math.max(0, mean + deviation * gaussian);
  }
}
