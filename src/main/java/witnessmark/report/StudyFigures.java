package witnessmark.report;

import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import witnessmark.sample.Study;
import witnessmark.sample.Value;
import witnessmark.stats.Analysis;
import witnessmark.stats.Capability;
import witnessmark.stats.Index;
import witnessmark.stats.IndividualsChart;
import witnessmark.stats.Interval;
import witnessmark.stats.Share;
import witnessmark.stats.Summary;
import witnessmark.torque.Verdict;

/** The figures of a study, for a terminal and a page. */
public final class StudyFigures {
  private final Study study;
  private final Analysis analysis;
  private final Scale scale;
  private final List<Figure> figures = new ArrayList<>();

  private StudyFigures(Study study, Analysis analysis) {
    this.study = study;
    this.analysis = analysis;
    this.scale = Scale.of(analysis.summary(), study.unit());
  }

  /** What the values come to, then how the tries ended. */
  public static List<Figure> of(Study study, Analysis analysis) {
    StudyFigures all = new StudyFigures(study, analysis);
    all.values();
    all.indices();
    all.tests();
    return List.copyOf(all.figures);
  }

  /** How the tries ended, where there may be no value. */
  public static List<Figure> tries(Study study) {
    List<Figure> figures = new ArrayList<>();
    study
        .tries()
        .firstPass()
        .ifPresent(s -> figures.add(new Figure("right at the first try", share(s))));
    add(figures, study, "tries below the band", Verdict.UNDER_TORQUE);
    add(figures, study, "tries above the band", Verdict.OVER_TORQUE);
    for (Verdict verdict : List.of(Verdict.ANGLE_LOW, Verdict.ANGLE_HIGH, Verdict.UNDECIDED)) {
      if (study.tries().verdicts().containsKey(verdict)) {
        add(figures, study, "tries " + verdict.code(), verdict);
      }
    }
    return figures;
  }

  private static void add(List<Figure> figures, Study study, String name, Verdict verdict) {
    study.tries().share(verdict).ifPresent(s -> figures.add(new Figure(name, share(s))));
  }

  private static String share(Share share) {
    Interval interval = share.interval();
    return String.format(
        Locale.ROOT,
        "%d of %d, %.1f %% (95 %%: %.1f to %.1f %%)",
        share.count(),
        share.of(),
        100 * share.value(),
        100 * interval.low(),
        100 * interval.high());
  }

  private void values() {
    Summary summary = analysis.summary();
    add("band", study.band() + (study.limits().lower().isEmpty() ? ", upper limit only" : ""));
    add("values", summary.n() + ", " + period(study.values()));
    add("mean", scale.text(summary.mean()));
    if (summary.n() > 1) {
      add("smallest, largest", scale.range(summary.least(), summary.greatest()));
      add("s, of all values", scale.text(summary.s()));
    }
    analysis
        .chart()
        .ifPresent(
            c ->
                add(
                    "sigma, value to value",
                    scale.text(c.sigma())
                        + " (mean moving range "
                        + scale.number(c.meanRange())
                        + " / "
                        + IndividualsChart.D2
                        + ")"));
    analysis
        .chart()
        .filter(c -> c.sigma() > 0)
        .ifPresent(c -> add("control limits", scale.range(c.lower(), c.upper())));
  }

  private static String period(List<Value> values) {
    String first = day(values.get(0));
    String last = day(values.get(values.size() - 1));
    return first.equals(last) ? first : first + " to " + last;
  }

  private static String day(Value value) {
    return value.moment().atOffset(ZoneOffset.UTC).toLocalDate().toString();
  }

  private void indices() {
    if (analysis.capability() instanceof Capability.Stated stated) {
      pair("Cp", "Cpk", stated.within());
      pair("Pp", "Ppk", stated.overall());
    }
  }

  private void pair(String both, String nearer, Index index) {
    index.spreadInterval().ifPresent(i -> add(both, interval(index.spread().getAsDouble(), i)));
    add(nearer, interval(index.nearest(), index.nearestInterval()));
  }

  private static String interval(double value, Interval interval) {
    return String.format(
        Locale.ROOT, "%.2f (95 %%: %.2f to %.2f)", value, interval.low(), interval.high());
  }

  private void tests() {
    analysis
        .stability()
        .ifPresent(
            s ->
                add(
                    "run rules",
                    String.format(
                        Locale.ROOT,
                        "%d %s; chance alone gives about %.1f",
                        s.alarms(),
                        s.alarms() == 1 ? "alarm" : "alarms",
                        s.expected())));
    Optional<String> normal =
        analysis
            .normality()
            .map(
                a ->
                    String.format(
                        Locale.ROOT,
                        "Anderson-Darling %.2f, p %s",
                        a.adjusted(),
                        Analysis.probability(a.probability())));
    normal.ifPresent(t -> add("normality", t));
  }

  private void add(String name, String text) {
    figures.add(new Figure(name, text));
  }
}
