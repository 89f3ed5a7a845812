package witnessmark.record;

import java.util.Objects;

/**
 * A wrench of a job that was found out of tolerance after it had been used there.
 *
 * @param wrench its serial number
 * @param entry that says so: a calibration, or the end of one by a check that failed
 * @param told by what it was found, in a few words
 * @param readings how many readings of the job it took since its last good calibration
 * @param standing how many passes of the job stand by one of these
 */
public record OutOfTolerance(String wrench, long entry, String told, long readings, long standing) {
  public OutOfTolerance {
    Objects.requireNonNull(wrench, "wrench");
    Objects.requireNonNull(told, "told");
  }
}
