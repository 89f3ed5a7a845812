package witnessmark.procedure;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Optional;
import witnessmark.torque.Adapter;
import witnessmark.torque.Rounded;
import witnessmark.torque.Torque;

/**
 * What the wrench's display shows when the fastener behind an adapter has its torque.
 *
 * <p>The limits are rounded inwards to five digits, or to as many more as keep them in order, so
 * that pulling to either of them stays within the band.
 *
 * @param target number to aim at, in the unit of the pass's target
 * @param low number in the unit of the band's lower limit
 * @param high number in the unit of the band's upper limit
 */
public record Pull(Optional<String> target, String low, String high) {
  private static final int SHORT = 5;
  private static final int LONG = 12;

  /** The pull for a pass with an adapter. */
  public static Pull of(Pass pass, Adapter adapter) {
    int digits = SHORT;
    while (digits < LONG && crossed(pass, adapter, digits)) {
      digits++;
    }
    MathContext nearest = new MathContext(digits, RoundingMode.HALF_EVEN);
    return new Pull(
        pass.target().map(t -> text(t, adapter, nearest)),
        text(pass.band().low(), adapter, new MathContext(digits, RoundingMode.CEILING)),
        text(pass.band().high(), adapter, new MathContext(digits, RoundingMode.FLOOR)));
  }

  /** Whether the limits, rounded inwards, would leave nothing between them. */
  private static boolean crossed(Pass pass, Adapter adapter, int digits) {
    return atDrive(pass.band().low(), adapter, new MathContext(digits, RoundingMode.CEILING))
            .multiply(pass.band().low().unit().newtonMetres())
            .compareTo(
                atDrive(pass.band().high(), adapter, new MathContext(digits, RoundingMode.FLOOR))
                    .multiply(pass.band().high().unit().newtonMetres()))
        > 0;
  }

  private static BigDecimal atDrive(Torque torque, Adapter adapter, MathContext digits) {
    return adapter.atDrive(torque.digits().value(), digits);
  }

  private static String text(Torque torque, Adapter adapter, MathContext digits) {
    return Rounded.text(atDrive(torque, adapter, digits), digits);
  }
}
