package witnessmark.procedure;

import java.util.List;
import java.util.Optional;
import witnessmark.torque.Digits;

/**
 * One or more numbers that a person enters, each within limits.
 *
 * @param labels what each number is, e.g. {@code left}, {@code right}; at least one
 * @param unit as shown to people, e.g. {@code mm}
 * @param low lowest acceptable value, limit included
 * @param high highest acceptable value, limit included
 * @param spread largest acceptable difference between the largest and the smallest number
 */
public record MeasureStep(
    String id,
    String title,
    Optional<List<Prerequisite>> after,
    List<String> labels,
    String unit,
    Digits low,
    Digits high,
    Optional<Digits> spread,
    Optional<String> note,
    Optional<String> picture)
    implements Step {
  public MeasureStep {
    after = after.map(List::copyOf);
    labels = List.copyOf(labels);
    if (low.value().compareTo(high.value()) > 0) {
      throw new IllegalArgumentException("limits upside down: " + low + " is above " + high);
    }
  }
}
