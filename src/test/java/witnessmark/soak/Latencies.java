package witnessmark.soak;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** Times in milliseconds. */
final class Latencies {
  private final List<Double> values = new ArrayList<>();

  void add(double millis) {
    values.add(millis);
  }

  /** The smallest that the given share of all does not exceed; endless when there are none. */
  double at(double share) {
    if (values.isEmpty()) {
      return Double.POSITIVE_INFINITY;
    }
    Collections.sort(values);
    return values.get(Math.max(0, (int) Math.ceil(share * values.size()) - 1));
  }
}
