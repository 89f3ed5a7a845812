package witnessmark.desk;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import witnessmark.entry.CalibrationEnd;
import witnessmark.entry.CalibrationPoint;
import witnessmark.entry.Entry;
import witnessmark.job.Shop;
import witnessmark.torque.Digits;
import witnessmark.torque.Label;
import witnessmark.wrench.CalibrationRule;
import witnessmark.wrench.Deviation;
import witnessmark.wrench.Wrench;

/**
 * Enters what a laboratory certified of a wrench.
 *
 * @param due empty for as many months later as the rule of the wrench's type says
 * @param operations empty for as many as the rule says
 * @param used readings on record already that were taken since
 * @param found how it came in; may be empty
 * @param left how it went out
 */
public record CalibrateWrench(
    String serial,
    String certificate,
    String laboratory,
    Instant calibrated,
    Optional<Instant> due,
    Optional<Long> operations,
    long used,
    Digits uncertainty,
    List<Tried> found,
    List<Tried> left,
    Optional<String> by)
    implements Command {
  /**
   * @throws IllegalArgumentException when a text is no label, or nothing was left
   */
  public CalibrateWrench {
    Label.check("wrench", serial);
    Label.check("certificate", certificate);
    Label.check("laboratory", laboratory);
    found = List.copyOf(found);
    left = List.copyOf(left);
    if (left.isEmpty()) {
      throw new IllegalArgumentException("a calibration has readings as left at one point or more");
    }
    if (uncertainty.value().signum() <= 0) {
      throw new IllegalArgumentException(
          "uncertainty " + uncertainty + " % is none; above 0 is allowed");
    }
    if (operations.filter(o -> o < 1).isPresent()) {
      throw new IllegalArgumentException("operations are 1 or more");
    }
  }

  @Override
  public List<Entry> decide(Shop shop, Instant at) {
    Ask.operator(shop, by);
    Wrench wrench = Ask.wrench(shop, serial);
    CalibrationRule rule = shop.rule(wrench.kind());
    Plausible.calibrated(calibrated, at);
    Instant end = due.orElseGet(() -> Intervals.months(calibrated, rule.months()));
    if (!calibrated.isBefore(end)) {
      throw new Declined(
          "The calibration is due on " + end + ", not after it was made; check the dates.");
    }
    List<CalibrationPoint> out = Tried.points(left, rule);
    List<CalibrationPoint> in = Tried.points(found, rule);
    Coverage.check(out, rule, wrench);
    notOlder(wrench);
    Plausible.points(left, wrench);
    Plausible.points(found, wrench);
    Plausible.uncertainty(uncertainty, rule.deviation());
    boolean within = Deviation.within(out);
    List<Entry> entries = new ArrayList<>();
    entries.add(
        new Entry.WrenchCalibrated(
            at,
            serial,
            certificate,
            laboratory,
            calibrated,
            end,
            operations.orElse(rule.operations()),
            used,
            uncertainty,
            in,
            out,
            in.isEmpty() ? Optional.empty() : Optional.of(Deviation.within(in)),
            within,
            by));
    Optional<String> papers = Optional.of("certificate " + certificate);
    if (!within) {
      entries.add(
          new Entry.CalibrationEnded(
              at, serial, calibrated, CalibrationEnd.LEFT_OUT_OF_TOLERANCE, by, papers));
    } else if (used >= operations.orElse(rule.operations())) {
      entries.add(
          new Entry.CalibrationEnded(
              at, serial, at, CalibrationEnd.OPERATIONS_USED_UP, by, papers));
    }
    return List.copyOf(entries);
  }

  /** An older calibration would be in force from its day on, in place of the newer one. */
  private void notOlder(Wrench newest) {
    if (calibrated.isBefore(newest.calibrated())) {
      throw new Declined(
          serial
              + " was calibrated on "
              + newest.calibrated()
              + " as is on record, after this one; check the date, or correct that one"
              + " (wrench enrol).");
    }
  }
}
