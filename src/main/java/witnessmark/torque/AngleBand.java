package witnessmark.torque;

/**
 * The smallest and largest acceptable angle in degrees, limits included.
 *
 * @param low smallest acceptable angle
 * @param high largest acceptable angle, not below {@code low}
 */
public record AngleBand(Angle low, Angle high) {
  /**
   * @throws IllegalArgumentException when the band is upside down
   */
  public AngleBand {
    if (low.compareTo(high) > 0) {
      throw new IllegalArgumentException(
          "angle band upside down: lowest " + low + " is above highest " + high);
    }
  }

  /** Where the angle lies: below, inside (limits included), or above. */
  public Side side(Angle angle) {
    if (angle.compareTo(low) < 0) {
      return Side.BELOW;
    }
    return angle.compareTo(high) > 0 ? Side.ABOVE : Side.INSIDE;
  }

  /** {@code 30 to 60 deg}. */
  @Override
  public String toString() {
    return low + " to " + high + " deg";
  }
}
