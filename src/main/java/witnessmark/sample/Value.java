package witnessmark.sample;

import java.time.Instant;
import java.util.Optional;

/**
 * A value of the process: the last accepted reading of a fastener in a job.
 *
 * @param entry its number in the log
 * @param moment when it happened
 * @param number the torque at the fastener, in the study's unit
 * @param reading the torque at the fastener as written
 */
public record Value(
    long entry,
    Instant moment,
    String job,
    String unit,
    String fastener,
    String wrench,
    Optional<String> operator,
    double number,
    String reading) {}
