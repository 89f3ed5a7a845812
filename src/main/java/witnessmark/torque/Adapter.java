package witnessmark.torque;

import java.math.BigDecimal;
import java.math.MathContext;

/**
 * What sits between the wrench's drive and the fastener and moves the fastener off the drive's
 * axis: a crow-foot, an offset extension. A socket extension along the axis is none.
 *
 * <p>The hand pulls at the middle of the handle, square to the wrench, with the force F. The wrench
 * measures the torque at its drive, F·L. Along the wrench the hand is L + E·cos α from the
 * fastener's axis, so that the fastener gets
 *
 * <pre>torque at the fastener = reading · (L + E·cos α) / L</pre>
 *
 * <p>α = 0: the adapter points straight on, away from the handle, and lengthens the lever: the
 * fastener gets more than the wrench shows. α = 90: it stands square to the wrench and changes
 * nothing. α = 180: it is folded back towards the handle and shortens the lever: the fastener gets
 * less. To which side it stands makes no difference.
 *
 * <p>The formula is that of U.S. Army TM 9-254, figures 4-5 and 4-6, TM 1-1500-204-23-9, figure
 * 8-16, and U.S. Navy NAVEDTRA 14008, figure 2-12; docs/sources.md says more.
 *
 * @param lever L: from the drive's centre to the middle of the handle, at least 1 mm
 * @param offset E: from the drive's centre to the fastener's centre
 * @param angle α: between the wrench's axis and the adapter, 0 to 180 degrees
 */
public record Adapter(Length lever, Length offset, Angle angle) {
  private static final BigDecimal SEMICIRCLE = BigDecimal.valueOf(180);

  /** The fastener on the drive's own axis. */
  public static final Adapter NONE =
      new Adapter(Length.parse("1 m"), Length.parse("0 m"), Angle.of("0"));

  /**
   * @throws IllegalArgumentException when the angle is out of range, or no lever is left
   */
  public Adapter {
    if (lever.millimetres().compareTo(BigDecimal.ONE) < 0) {
      throw new IllegalArgumentException(
          "lever " + lever + " is no lever; measure from the drive to the middle of the handle");
    }
    if (angle.degrees().value().signum() < 0 || angle.degrees().value().compareTo(SEMICIRCLE) > 0) {
      throw new IllegalArgumentException(
          "adapter angle " + angle + " is out of range; 0 (straight on) to 180 (folded back)");
    }
    if (reach(lever, offset, angle).compareTo(BigDecimal.ONE) < 0) {
      throw new IllegalArgumentException(
          "offset "
              + offset
              + " folded back leaves nothing of lever "
              + lever
              + "; the fastener must lie before the handle");
    }
  }

  /** L + E·cos α in millimetres, exact but for the cosine of {@link Cosine#DECIMALS} decimals. */
  private static BigDecimal reach(Length lever, Length offset, Angle angle) {
    if (offset.millimetres().signum() == 0) {
      return lever.millimetres();
    }
    BigDecimal along = offset.millimetres().multiply(Cosine.of(angle.degrees().value()));
    return lever.millimetres().add(along);
  }

  /**
   * Compares a share of the torque at the fastener with a limit there, in exact arithmetic: nothing
   * is divided.
   *
   * @param reading the torque at the drive
   * @param share of the torque at the fastener, 1 for the whole
   * @return negative, 0 or positive as the share is below, at or above the limit
   */
  public int compare(Torque reading, BigDecimal share, Torque limit) {
    return compare(reading.newtonMetres().multiply(share), limit.newtonMetres());
  }

  /** Compares a value at the drive with one at the fastener, in exact arithmetic. */
  public int compare(BigDecimal atDrive, BigDecimal atFastener) {
    if (offset.digits().value().signum() == 0) {
      return atDrive.compareTo(atFastener);
    }
    return atDrive
        .multiply(reach(lever, offset, angle))
        .compareTo(atFastener.multiply(lever.millimetres()));
  }

  /**
   * Compares what a wrench shows for a torque behind this adapter with what it shows for another
   * behind another, in exact arithmetic.
   *
   * @param atFastener in any unit
   * @param elsewhere in the same unit, at the fastener behind the other adapter
   */
  public int compareAtDrive(BigDecimal atFastener, Adapter other, BigDecimal elsewhere) {
    return atFastener
        .multiply(lever.millimetres())
        .multiply(reach(other.lever, other.offset, other.angle))
        .compareTo(
            elsewhere.multiply(other.lever.millimetres()).multiply(reach(lever, offset, angle)));
  }

  /** Where the torque at the fastener lies beside a band there. */
  public Side side(Band band, Torque reading) {
    BigDecimal atDrive = reading.newtonMetres();
    if (compare(atDrive, band.low().newtonMetres()) < 0) {
      return Side.BELOW;
    }
    return compare(atDrive, band.high().newtonMetres()) > 0 ? Side.ABOVE : Side.INSIDE;
  }

  /** A value at the drive as one at the fastener, rounded to the digits given. */
  public BigDecimal atFastener(BigDecimal atDrive, MathContext digits) {
    return atDrive.multiply(reach(lever, offset, angle)).divide(lever.millimetres(), digits);
  }

  /** A value at the fastener as one at the drive, rounded to the digits given. */
  public BigDecimal atDrive(BigDecimal atFastener, MathContext digits) {
    return atFastener.multiply(lever.millimetres()).divide(reach(lever, offset, angle), digits);
  }
}
