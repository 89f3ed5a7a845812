package witnessmark.entry;

import java.util.List;
import java.util.Objects;
import witnessmark.torque.Digits;
import witnessmark.torque.Torque;

/**
 * What a wrench did at one point of a calibration or check.
 *
 * @param indicated what the wrench showed, or was set to
 * @param reference what the reference measured each time, at least once and above 0
 * @param permissible largest deviation allowed there, in per cent of the reference, limit included
 */
public record CalibrationPoint(Torque indicated, List<Torque> reference, Digits permissible) {
  /**
   * @throws IllegalArgumentException when there is no reading, one is 0, or the permissible
   *     deviation is not above 0
   */
  public CalibrationPoint {
    Objects.requireNonNull(indicated, "indicated");
    reference = List.copyOf(reference);
    if (reference.isEmpty()) {
      throw new IllegalArgumentException("point " + indicated + " has no reading");
    }
    if (reference.stream().anyMatch(r -> r.newtonMetres().signum() == 0)) {
      throw new IllegalArgumentException(
          "point " + indicated + " has a reading of 0; above 0 is allowed");
    }
    if (permissible.value().signum() <= 0) {
      throw new IllegalArgumentException(
          "permissible deviation " + permissible + " % is none; above 0 is allowed");
    }
  }
}
