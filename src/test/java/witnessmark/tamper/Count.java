package witnessmark.tamper;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import witnessmark.tamper.Examiner.Outcome;

/** What came of the edits of one kind. */
final class Count {
  private final Kind kind;
  private final Map<Outcome, Integer> outcomes = new EnumMap<>(Outcome.class);
  private final List<Integer> unrevealed = new ArrayList<>();

  Count(Kind kind) {
    this.kind = kind;
  }

  void add(int edit, Outcome outcome) {
    outcomes.merge(outcome, 1, Integer::sum);
    if (outcome == Outcome.UNREVEALED) {
      unrevealed.add(edit);
    }
  }

  Kind kind() {
    return kind;
  }

  int of(Outcome outcome) {
    return outcomes.getOrDefault(outcome, 0);
  }

  int edits() {
    return outcomes.values().stream().mapToInt(Integer::intValue).sum();
  }

  /** Which edits, by their number in the run. */
  List<Integer> unrevealed() {
    return unrevealed;
  }
}
