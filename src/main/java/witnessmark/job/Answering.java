package witnessmark.job;

import java.time.Instant;
import java.util.Optional;

/**
 * A question that the next position scanned at the job's station is to answer.
 *
 * @param question the torque event's entry
 * @param since when that was said
 * @param operator the badge that the scan itself named, which must be the same on the answer
 * @param stale whether anything came in between, so that a position may be meant otherwise
 */
public record Answering(long question, Instant since, Optional<String> operator, boolean stale) {
  Answering disturbed() {
    return new Answering(question, since, operator, true);
  }
}
