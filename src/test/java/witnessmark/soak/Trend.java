package witnessmark.soak;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;

/**
 * What was seen, and whether it stays flat: after a fifth of the time to warm up, the median of the
 * last third is set against that of the first third.
 */
final class Trend {
  private record Look(Latencies latencies, Vitals vitals) {}

  private final List<Look> looks = new ArrayList<>();

  void add(Latencies latencies, Vitals vitals) {
    looks.add(new Look(latencies, vitals));
  }

  /** What does not stay flat, as sentences. */
  List<String> faults() {
    List<String> faults = new ArrayList<>();
    // Allowed: a share for what a machine does by itself, and a little for what is small anyway.
    judge(faults, "heap after a collection, MB", l -> l.vitals().heapMb(), 1.1, 1);
    judge(faults, "memory of the process, MB", l -> l.vitals().residentMb(), 1.1, 8);
    judge(faults, "open files", l -> l.vitals().files(), 1, 2);
    judge(faults, "threads", l -> l.vitals().threads(), 1, 2);
    judge(faults, "write-ahead file, MB", l -> l.vitals().walMb(), 1.5, 4);
    judge(faults, "time to a verdict, median, ms", l -> l.latencies().at(0.5), 1.5, 1);
    judge(faults, "time to a verdict, 99 of 100, ms", l -> l.latencies().at(0.99), 2, 5);
    return faults;
  }

  private void judge(
      List<String> faults, String what, ToDoubleFunction<Look> value, double times, double plus) {
    int from = looks.size() / 5;
    int third = Math.max(1, (looks.size() - from) / 3);
    double first = median(looks.subList(from, from + third), value);
    double last = median(looks.subList(looks.size() - third, looks.size()), value);
    if (!(last <= first * times + plus)) {
      faults.add(String.format(Locale.ROOT, "Grew from %.2f to %.2f: %s.", first, last, what));
    }
  }

  private static double median(List<Look> looks, ToDoubleFunction<Look> value) {
    double[] sorted = looks.stream().mapToDouble(value).sorted().toArray();
    return sorted[sorted.length / 2];
  }
}
