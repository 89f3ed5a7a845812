package witnessmark.procedure;

import java.util.List;
import java.util.Optional;

/**
 * Something a person confirms, such as a new washer or a fitted safety wire.
 *
 * @param statement the sentence the person confirms
 */
public record AttestStep(
    String id,
    String title,
    Optional<List<Prerequisite>> after,
    String statement,
    Optional<String> note,
    Optional<String> picture)
    implements Step {
  public AttestStep {
    after = after.map(List::copyOf);
  }
}
