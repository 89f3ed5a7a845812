package witnessmark.benchmark;

import java.util.Arrays;
import java.util.List;

/** Measured values in the order they came. */
final class Figures {
  private double[] values = new double[64];
  private int count;

  void add(double value) {
    if (count == values.length) {
      values = Arrays.copyOf(values, 2 * count);
    }
    values[count++] = value;
  }

  /** The smallest value that the given share of all values, 0 to 1, does not exceed. */
  double at(double share) {
    double[] sorted = Arrays.copyOf(values, count);
    Arrays.sort(sorted);
    return sorted[Math.max(0, (int) Math.ceil(share * count) - 1)];
  }

  double median() {
    return at(0.5);
  }

  double mean() {
    return Arrays.stream(values, 0, count).sum() / count;
  }

  double least() {
    return at(0);
  }

  double most() {
    return at(1);
  }

  /** The ratios of two series round by round, so that what disturbs a round disturbs both. */
  static Figures ratio(Figures over, Figures under) {
    Figures ratios = new Figures();
    for (int i = 0; i < over.count; i++) {
      ratios.add(over.values[i] / under.values[i]);
    }
    return ratios;
  }

  /** The smaller of two values, one by one. */
  static Figures lesser(Figures one, Figures other) {
    Figures least = new Figures();
    for (int i = 0; i < one.count; i++) {
      least.add(Math.min(one.values[i], other.values[i]));
    }
    return least;
  }

  /** All values of several series. */
  static Figures pooled(List<Figures> series) {
    Figures all = new Figures();
    for (Figures one : series) {
      for (int i = 0; i < one.count; i++) {
        all.add(one.values[i]);
      }
    }
    return all;
  }
}
