package witnessmark.report;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Optional;
import witnessmark.torque.Band;
import witnessmark.torque.Torque;
import witnessmark.torque.TorqueUnit;

/** A torque in the unit of the band it was judged against, for the eye. */
final class InBandsUnit {
  private InBandsUnit() {}

  /**
   * The torque by the exact factor, with one decimal more than the band is written with; empty
   * where it has the band's unit already.
   */
  static Optional<String> of(Torque torque, Band band) {
    TorqueUnit unit = band.low().unit();
    if (torque.unit() == unit || band.high().unit() != unit) {
      return Optional.empty();
    }
    int decimals = Math.max(decimals(band.low()), decimals(band.high())) + 1;
    BigDecimal converted =
        torque
            .newtonMetres()
            .divide(unit.newtonMetres(), MathContext.DECIMAL128)
            .setScale(decimals, RoundingMode.HALF_EVEN);
    return Optional.of(converted.toPlainString() + " " + unit);
  }

  private static int decimals(Torque torque) {
    return Math.max(0, torque.digits().value().scale());
  }
}
