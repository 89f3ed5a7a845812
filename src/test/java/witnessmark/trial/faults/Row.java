package witnessmark.trial.faults;

import java.util.List;

/**
 * What came of a fault.
 *
 * @param figures what was counted
 * @param seen what people saw meanwhile, and exact reasons
 * @param broken the promises that did not hold
 */
record Row(Figures figures, List<String> seen, List<String> broken) {
  Row {
    seen = List.copyOf(seen);
    broken = List.copyOf(broken);
  }
}
