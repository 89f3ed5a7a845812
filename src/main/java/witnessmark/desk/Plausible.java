package witnessmark.desk;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import witnessmark.torque.Digits;
import witnessmark.wrench.Wrench;

/** Stops slips of typing before they are on record for ever. */
final class Plausible {
  /** A calibration older than that is a slip: no wrench is due so late. */
  private static final int YEARS = 20;

  private Plausible() {}

  /**
   * @throws Declined when the day of a calibration lies in the future or decades back
   */
  static void calibrated(Instant calibrated, Instant at) {
    if (calibrated.isAfter(at)) {
      throw new Declined("The calibration date " + calibrated + " lies in the future; check it.");
    }
    if (calibrated.isBefore(at.atOffset(ZoneOffset.UTC).minusYears(YEARS).toInstant())) {
      throw new Declined(
          "The calibration date "
              + calibrated
              + " lies more than "
              + YEARS
              + " years back; check it.");
    }
  }

  /**
   * @throws Declined when the laboratory's uncertainty is larger than what it is to find
   */
  static void uncertainty(Digits uncertainty, Digits permissible) {
    if (uncertainty.value().compareTo(permissible.value()) > 0) {
      throw new Declined(
          "An uncertainty of "
              + uncertainty
              + " % cannot tell whether a wrench is within "
              + permissible
              + " %; check the figure, or change the rule (wrench rule).");
    }
  }

  /**
   * @throws Declined when a point lies outside the wrench's range, or is there twice
   */
  static void points(List<Tried> tried, Wrench wrench) {
    Set<BigDecimal> seen = new HashSet<>();
    for (Tried t : tried) {
      if (!wrench.covers(t.indicated())) {
        throw new Declined(
            "Point "
                + t.indicated()
                + " is outside the range of "
                + wrench.serial()
                + ", "
                + wrench.low()
                + " to "
                + wrench.high()
                + "; check it.");
      }
      if (!seen.add(t.indicated().newtonMetres().stripTrailingZeros())) {
        throw new Declined(
            "Point " + t.indicated() + " is there twice; give all its readings after one colon.");
      }
    }
  }
}
