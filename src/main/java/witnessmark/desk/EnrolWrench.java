package witnessmark.desk;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import witnessmark.entry.Entry;
import witnessmark.job.Shop;
import witnessmark.torque.Digits;
import witnessmark.torque.Label;
import witnessmark.torque.Torque;
import witnessmark.torque.WrenchKind;
import witnessmark.wrench.Wrench;

/** Makes a wrench known, or renews its data. */
public record EnrolWrench(
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
    Optional<String> by)
    implements Command {
  /**
   * @throws IllegalArgumentException when the range or the calibration interval is upside down, or
   *     uncertainty or resolution is none
   */
  public EnrolWrench {
    Label.check("wrench", serial);
    new Wrench(
        serial,
        low,
        high,
        calibrated,
        due,
        certificate,
        uncertainty,
        resolution,
        kind,
        reportsAngle,
        0);
  }

  /** An indicating wrench that reports angles, of a resolution not known. */
  public EnrolWrench(
      String serial,
      Torque low,
      Torque high,
      Instant calibrated,
      Instant due,
      Optional<String> certificate,
      Optional<Digits> uncertainty,
      Optional<String> by) {
    this(
        serial,
        low,
        high,
        calibrated,
        due,
        certificate,
        uncertainty,
        Optional.empty(),
        WrenchKind.INDICATING,
        true,
        by);
  }

  @Override
  public List<Entry> decide(Shop shop, Instant at) {
    Ask.operator(shop, by);
    Plausible.calibrated(calibrated, at);
    return List.of(
        new Entry.WrenchEnrolled(
            at,
            serial,
            low,
            high,
            calibrated,
            due,
            certificate,
            uncertainty,
            resolution,
            Optional.of(kind),
            Optional.of(reportsAngle),
            by));
  }
}
