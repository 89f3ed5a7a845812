package witnessmark.sight;

/**
 * What the readings of a wrench tell beside the torque.
 *
 * @param angle how far it turned
 * @param position on which fastener it was, by the wrench or by a scan before each reading
 * @param breakaway the torque at which the turning began
 */
public record Ability(boolean angle, boolean position, boolean breakaway) {
  /** Torque and nothing else. */
  public static final Ability TORQUE_ONLY = new Ability(false, false, false);

  /** Torque and angle. */
  public static final Ability ANGLE = new Ability(true, false, false);

  /** Torque, and the position with every reading. */
  public static final Ability POSITION = new Ability(false, true, false);

  /** Torque, and the torque at which the turning began. */
  public static final Ability BREAKAWAY = new Ability(false, false, true);

  /** What either of two tells. */
  public Ability and(Ability other) {
    return new Ability(
        angle || other.angle, position || other.position, breakaway || other.breakaway);
  }

  /** What both of two tell: all that counts where either may be used. */
  public Ability common(Ability other) {
    return new Ability(
        angle && other.angle, position && other.position, breakaway && other.breakaway);
  }
}
