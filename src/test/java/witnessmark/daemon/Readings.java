package witnessmark.daemon;

import java.util.List;
import java.util.stream.IntStream;

/** Readings of wrench TW-0417 for tests that need many, whatever becomes of them. */
final class Readings {
  private Readings() {}

  static List<String> of(int count) {
    return IntStream.rangeClosed(1, count)
        .mapToObj(
            n ->
                "{\"wrench\":\"TW-0417\",\"event\":"
                    + n
                    + ",\"torque\":\"33.0\",\"unit\":\"N.m\",\"angle\":\"40\"}")
        .toList();
  }
}
