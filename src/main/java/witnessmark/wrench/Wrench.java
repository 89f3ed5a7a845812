package witnessmark.wrench;

import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import witnessmark.entry.Entry;
import witnessmark.torque.Digits;
import witnessmark.torque.Torque;
import witnessmark.torque.WrenchKind;

/**
 * A wrench with the calibration that one of its enrolments states.
 *
 * @param serial the serial number it sends
 * @param low lower end of its range, limit included
 * @param high upper end of its range, limit included
 * @param calibrated from when the calibration is in force
 * @param due from when it is no longer
 * @param certificate number of the calibration certificate
 * @param uncertainty expanded uncertainty in per cent of the reading, k = 2
 * @param resolution the smallest step of its reading, where known
 * @param kind whether it shows the torque or signals a set one
 * @param reportsAngle whether its events carry an angle
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
    Optional<Torque> resolution,
    WrenchKind kind,
    boolean reportsAngle,
    long enrolled) {
  /**
   * @throws IllegalArgumentException when the range or the calibration interval is upside down, or
   *     the uncertainty or the resolution is none
   */
  public Wrench {
    Objects.requireNonNull(serial, "serial");
    Objects.requireNonNull(kind, "kind");
    if (low.compareTo(high) >= 0) {
      throw new IllegalArgumentException(
          "range upside down: lowest " + low + " is not below highest " + high);
    }
    if (!calibrated.isBefore(due)) {
      throw new IllegalArgumentException(
          "calibration is due on " + due + ", not after it was made on " + calibrated);
    }
    if (uncertainty.filter(u -> u.value().signum() <= 0).isPresent()) {
      throw new IllegalArgumentException(
          "uncertainty " + uncertainty.get() + " % is none; above 0 is allowed");
    }
    if (resolution.filter(r -> r.digits().value().signum() == 0).isPresent()) {
      throw new IllegalArgumentException(
          "resolution " + resolution.get() + " is none; above 0 is allowed");
    }
  }

  /**
   * The same wrench after a calibration that left it within the permissible deviation.
   *
   * @param n the entry that says so
   */
  public Wrench calibrated(long n, Entry.WrenchCalibrated c) {
    return new Wrench(
        serial,
        low,
        high,
        c.calibrated(),
        c.due(),
        Optional.of(c.certificate()),
        Optional.of(c.uncertainty()),
        resolution,
        kind,
        reportsAngle,
        n);
  }

  /** The same wrench with its calibration ended at a moment, at its very beginning at earliest. */
  public Wrench ended(Instant from) {
    if (!from.isBefore(due)) {
      return this;
    }
    Instant end = from.isAfter(calibrated) ? from : calibrated.plusMillis(1);
    return new Wrench(
        serial,
        low,
        high,
        calibrated,
        end,
        certificate,
        uncertainty,
        resolution,
        kind,
        reportsAngle,
        enrolled);
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
