package witnessmark.procedure;

import java.util.List;
import java.util.Optional;

/**
 * Something a person confirms, such as a new washer or a fitted safety wire.
 *
 * @param statement the sentence the person confirms
 * @param renew whether it must be confirmed again whenever a fastener that waits for it directly is
 *     loosened or replaced
 */
public record AttestStep(
    String id,
    String title,
    Optional<List<Prerequisite>> after,
    String statement,
    boolean renew,
    Optional<String> note,
    Optional<String> picture)
    implements Step {
  public AttestStep {
    after = after.map(List::copyOf);
  }
}
