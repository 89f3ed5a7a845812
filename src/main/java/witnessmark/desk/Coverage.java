package witnessmark.desk;

import java.math.BigDecimal;
import java.util.List;
import witnessmark.entry.CalibrationPoint;
import witnessmark.wrench.CalibrationRule;
import witnessmark.wrench.Wrench;

/** Whether a calibration says enough for the rule of the wrench's type. */
final class Coverage {
  /**
   * A point counts as taken when it lies this near, as a share of it: common practice, no source.
   */
  private static final BigDecimal NEAR = new BigDecimal("0.1");

  private Coverage() {}

  /**
   * @throws Declined when a point is missing or has too few readings
   */
  static void check(List<CalibrationPoint> left, CalibrationRule rule, Wrench wrench) {
    for (CalibrationPoint point : left) {
      if (point.reference().size() < rule.readings()) {
        throw new Declined(
            "Point "
                + point.indicated()
                + " has "
                + point.reference().size()
                + " readings; the rule for "
                + wrench.kind().code()
                + " wrenches asks for "
                + rule.readings()
                + ". Enter all of them, or change the rule (wrench rule).");
      }
    }
    for (BigDecimal asked : rule.points(wrench)) {
      if (left.stream().noneMatch(p -> near(p.indicated().newtonMetres(), asked))) {
        throw new Declined(
            "No point as left is near "
                + asked.stripTrailingZeros().toPlainString()
                + " N.m, which the rule for "
                + wrench.kind().code()
                + " wrenches asks for. Enter it, or change the rule (wrench rule).");
      }
    }
  }

  private static boolean near(BigDecimal taken, BigDecimal asked) {
    return taken.subtract(asked).abs().compareTo(asked.multiply(NEAR)) <= 0;
  }
}
