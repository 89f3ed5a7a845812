package witnessmark.sample;

import java.math.BigDecimal;
import java.math.MathContext;
import witnessmark.torque.Torque;
import witnessmark.torque.TorqueUnit;

/** Torques in another unit, by the exact factors. */
final class Conversion {
  private Conversion() {}

  /** The torque as a number of that unit, exactly in its own, else to 34 digits. */
  static BigDecimal to(TorqueUnit unit, Torque torque) {
    return torque.unit() == unit
        ? torque.digits().value()
        : torque.newtonMetres().divide(unit.newtonMetres(), MathContext.DECIMAL128);
  }
}
