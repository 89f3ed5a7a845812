package witnessmark.stats;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;

/**
 * What a series of values shows beside its limits.
 *
 * @param chart from two values on
 * @param stability of the chart, where there is some spread
 * @param normality from eight values on, where there is some spread
 */
public record Analysis(
    List<Double> values,
    Limits limits,
    Summary summary,
    Optional<IndividualsChart> chart,
    Optional<Stability> stability,
    Optional<AndersonDarling> normality,
    Capability capability) {
  /** What is rarer than this among normal values is not taken for normal. */
  public static final double ODD = 0.05;

  /** Of the points that a caution names, so many are listed. */
  private static final int LISTED = 8;

  public static Analysis of(List<Double> values, Limits limits) {
    Summary summary = Summary.of(values);
    Optional<IndividualsChart> chart =
        summary.n() < 2 ? Optional.empty() : Optional.of(IndividualsChart.of(values));
    Optional<Stability> stability = chart.filter(c -> c.sigma() > 0).map(Stability::of);
    boolean testable = summary.n() >= AndersonDarling.LEAST && summary.s() > 0;
    return new Analysis(
        List.copyOf(values),
        limits,
        summary,
        chart,
        stability,
        testable ? Optional.of(AndersonDarling.of(values)) : Optional.empty(),
        Capability.of(summary, chart, stability, limits));
  }

  /** What to know before relying on the figures, in sentences. */
  public List<String> cautions() {
    List<String> cautions = new ArrayList<>();
    if (capability instanceof Capability.Stated && summary.n() < Capability.STUDY) {
      cautions.add(
          summary.n()
              + " values are few: look at the intervals. About "
              + Capability.ENOUGH
              + " are asked for, and "
              + Capability.STUDY
              + " or more for a study.");
    }
    normality
        .filter(a -> a.probability() < ODD)
        .ifPresent(
            a ->
                cautions.add(
                    String.format(
                        Locale.ROOT,
                        "The values do not look normal (Anderson-Darling, p %s): what is reckoned"
                            + " from an index about shares outside the band does not hold; go by the"
                            + " observed ones.",
                        probability(a.probability()))));
    if (chart.isPresent() && !chart.get().signals().isEmpty() && stability.orElseThrow().stable()) {
      cautions.add(
          String.format(
              Locale.ROOT,
              "The run rules raise %d %s; a stable process of %d values gives about %.1f. Look at"
                  + " the points marked all the same.",
              stability.get().alarms(),
              stability.get().alarms() == 1 ? "alarm" : "alarms",
              summary.n(),
              stability.get().expected()));
    }
    chart
        .map(IndividualsChart::wideRanges)
        .filter(w -> !w.isEmpty())
        .ifPresent(w -> cautions.add(wide(w)));
    if (summary.s() > 0 && step() > summary.s()) {
      cautions.add(
          "The readings are in steps coarser than their spread: spread and run rules are rough.");
    }
    return List.copyOf(cautions);
  }

  private static String wide(List<Integer> places) {
    List<String> points = places.stream().limit(LISTED).map(i -> Integer.toString(i + 1)).toList();
    return (places.size() == 1
            ? "1 moving range is above its limit, at point "
            : places.size() + " moving ranges are above their limit, at points ")
        + String.join(", ", points)
        + (places.size() > LISTED ? " and further on" : "")
        + "; of those of a stable process about 1 in 100 is.";
  }

  /** {@code 0.03}, or {@code below 0.005}. */
  public static String probability(double p) {
    return p < 0.005 ? "below 0.005" : String.format(Locale.ROOT, "%.2f", p);
  }

  /** The smallest difference of two different values. */
  private double step() {
    double step = Double.POSITIVE_INFINITY;
    Double before = null;
    for (Double value : new TreeSet<>(values)) {
      if (before != null) {
        step = Math.min(step, value - before);
      }
      before = value;
    }
    return step;
  }
}
