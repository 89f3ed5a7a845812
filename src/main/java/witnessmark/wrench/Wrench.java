package witnessmark.wrench;

import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import witnessmark.torque.Digits;
import witnessmark.torque.Torque;

/**
 * An enrolled wrench with the calibration that its newest enrolment states.
 *
 * @param serial the serial number it sends
 * @param low lower end of its range, limit included
 * @param high upper end of its range, limit included
 * @param calibrated from when the calibration is in force
 * @param due from when it is no longer
 * @param certificate number of the calibration certificate
 * @param uncertainty expanded uncertainty in per cent of the reading, k = 2
 * @param enrolled the entry that says so
 */
public record Wrench(
    String serial,
    Torque low,
    Torque high,
    Instant calibrated,
    Instant due,
    Optional<String> certificate,
    Optional<Digits> uncertainty,
    long enrolled) {
  /**
   * @throws IllegalArgumentException when the range or the calibration interval is upside down
   */
  public Wrench {
    Objects.requireNonNull(serial, "serial");
    if (low.compareTo(high) >= 0) {
      throw new IllegalArgumentException(
          "range upside down: lowest " + low + " is not below highest " + high);
    }
    if (!calibrated.isBefore(due)) {
      throw new IllegalArgumentException(
          "calibration is due on " + due + ", not after it was made on " + calibrated);
    }
  }

  /** Whether the torque lies in the range, limits included. */
  public boolean covers(Torque torque) {
    return torque.compareTo(low) >= 0 && torque.compareTo(high) <= 0;
  }

  /** Whether a calibration is in force at the moment. */
  public boolean calibratedAt(Instant moment) {
    return !moment.isBefore(calibrated) && moment.isBefore(due);
  }
}
