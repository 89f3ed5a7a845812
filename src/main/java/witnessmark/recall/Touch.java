package witnessmark.recall;

import java.time.Instant;
import java.util.Objects;
import witnessmark.procedure.Criticality;
import witnessmark.torque.Torque;

/**
 * The reading by which a joint stands.
 *
 * @param entry its torque event's entry
 * @param moment when it happened
 * @param indicated what the wrench showed, at the drive
 * @param atFastener the torque at the fastener that follows from it
 * @param low lowest acceptable torque there
 * @param high highest acceptable torque there
 * @param order its number among the readings of the wrench between the two calibrations, from 1; 0
 *     while they are not numbered yet
 */
public record Touch(
    String unit,
    String job,
    String fastener,
    String pass,
    Criticality criticality,
    long entry,
    Instant moment,
    Torque indicated,
    Torque atFastener,
    Torque low,
    Torque high,
    long order) {
  public Touch {
    Objects.requireNonNull(unit, "unit");
    Objects.requireNonNull(criticality, "criticality");
    Objects.requireNonNull(moment, "moment");
  }

  /** The same as the reading of that number. */
  Touch inOrder(long number) {
    return new Touch(
        unit,
        job,
        fastener,
        pass,
        criticality,
        entry,
        moment,
        indicated,
        atFastener,
        low,
        high,
        number);
  }
}
