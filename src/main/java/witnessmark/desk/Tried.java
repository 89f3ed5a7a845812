package witnessmark.desk;

import java.util.List;
import witnessmark.entry.CalibrationPoint;
import witnessmark.torque.Torque;
import witnessmark.wrench.CalibrationRule;

/**
 * Readings at one point, before anybody judged them.
 *
 * @param indicated what the wrench showed, or was set to
 * @param reference what the reference measured each time
 */
public record Tried(Torque indicated, List<Torque> reference) {
  /**
   * @throws IllegalArgumentException when a reading is 0
   */
  public Tried {
    reference = List.copyOf(reference);
    if (reference.stream().anyMatch(r -> r.newtonMetres().signum() == 0)) {
      throw new IllegalArgumentException(
          "point " + indicated + " has a reading of 0; above 0 is allowed");
    }
  }

  /** The points with the deviation that a rule permits at each. */
  static List<CalibrationPoint> points(List<Tried> tried, CalibrationRule rule) {
    return tried.stream()
        .map(
            t ->
                new CalibrationPoint(t.indicated(), t.reference(), rule.permissible(t.indicated())))
        .toList();
  }
}
