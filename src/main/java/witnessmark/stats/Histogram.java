package witnessmark.stats;

import java.util.Arrays;
import java.util.List;

/**
 * How many values lie where.
 *
 * @param start the lower edge of the first bin
 * @param width of each bin, above 0, in the values' unit; an edge belongs to the bin above it
 * @param counts of each bin
 */
public record Histogram(double start, double width, List<Integer> counts) {
  /** So that values as written fall to the side that they belong to. */
  private static final double SLACK = 1e-6;

  public Histogram {
    counts = List.copyOf(counts);
  }

  /** About √n bins of a width of 1, 2 or 5 times a power of ten. */
  public static Histogram of(List<Double> values) {
    Summary summary = Summary.of(values);
    double range = summary.greatest() - summary.least();
    double width =
        range > 0 ? round(range / Math.sqrt(summary.n())) : round(Math.abs(summary.mean()) / 100);
    double start = Math.floor(summary.least() / width + SLACK) * width;
    int bins = (int) Math.floor((summary.greatest() - start) / width + SLACK) + 1;
    Integer[] counts = new Integer[bins];
    Arrays.fill(counts, 0);
    for (double value : values) {
      counts[(int) Math.floor((value - start) / width + SLACK)]++;
    }
    return new Histogram(start, width, List.of(counts));
  }

  /** The smallest of 1, 2, 5, 10, … that is not below. */
  private static double round(double width) {
    if (!(width > 0)) {
      return 1;
    }
    double power = Math.pow(10, Math.floor(Math.log10(width)));
    for (double step : new double[] {1, 2, 5}) {
      if (step * power >= width * (1 - SLACK)) {
        return step * power;
      }
    }
    return 10 * power;
  }
}
