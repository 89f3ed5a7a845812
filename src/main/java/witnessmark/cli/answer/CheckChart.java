package witnessmark.cli.answer;

import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import witnessmark.cli.answer.CheckSeries.Check;
import witnessmark.stats.Drift;
import witnessmark.stats.IndividualsChart;
import witnessmark.stats.RunRule;
import witnessmark.stats.Signal;

/** The individuals chart of a wrench's checks, drawn with characters. */
public final class CheckChart {
  /** Characters from one permissible deviation to the other. */
  private static final int WIDTH = 41;

  /** Of earlier ones only the figures are told. */
  private static final int SHOWN = 30;

  private CheckChart() {}

  /** The chart and what it says. */
  public static List<String> lines(CheckSeries series) {
    List<String> lines = new ArrayList<>();
    int count = series.checks().size();
    Optional<IndividualsChart> chart = chart(series);
    lines.add(
        "At "
            + series.indicated()
            + ": "
            + count
            + (count == 1 ? " check" : " checks")
            + " since the newest calibration"
            + chart.map(CheckChart::limits).orElse("")
            + ".");
    lines.add(scale(series));
    for (int i = Math.max(0, count - SHOWN); i < count; i++) {
      lines.add(line(series, i, chart));
    }
    lines.addAll(warnings(series));
    return lines;
  }

  /** What warns before the permissible deviation is reached; empty when nothing does. */
  public static List<String> warnings(CheckSeries series) {
    List<String> found = new ArrayList<>();
    int last = series.checks().size() - 1;
    chart(series)
        .flatMap(c -> c.signals().stream().filter(s -> s.index() == last).findFirst())
        .ifPresent(s -> found.add("Warning: the newest check shows a change: " + rules(s) + "."));
    Drift drift = Drift.of(series.deviations(), series.permissible());
    if (drift instanceof Drift.Seen) {
      found.add("Warning: " + drift.sentence("%"));
    }
    return found;
  }

  private static Optional<IndividualsChart> chart(CheckSeries series) {
    return series.checks().size() < Drift.LEAST
        ? Optional.empty()
        : Optional.of(IndividualsChart.of(series.deviations()));
  }

  private static String limits(IndividualsChart chart) {
    return String.format(
        Locale.ROOT,
        "; mean %+.2f %%, limits of the chart %+.2f to %+.2f %%",
        chart.centre(),
        chart.lower(),
        chart.upper());
  }

  private static String scale(CheckSeries series) {
    String low = String.format(Locale.ROOT, "-%s %%", plain(series.permissible()));
    String high = String.format(Locale.ROOT, "+%s %%", plain(series.permissible()));
    return " ".repeat(29) + low + " ".repeat(WIDTH + 2 - low.length() - high.length()) + high;
  }

  private static String plain(double value) {
    return java.math.BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
  }

  private static String line(CheckSeries series, int index, Optional<IndividualsChart> chart) {
    Check check = series.checks().get(index);
    StringBuilder bar = new StringBuilder(" ".repeat(WIDTH));
    bar.setCharAt(WIDTH / 2, ':');
    int place = place(check.deviation() / series.permissible());
    boolean beyond = place < 0 || place >= WIDTH;
    bar.setCharAt(Math.max(0, Math.min(WIDTH - 1, place)), beyond ? (place < 0 ? '<' : '>') : '*');
    String signal =
        chart
            .flatMap(c -> c.signals().stream().filter(s -> s.index() == index).findFirst())
            .map(s -> "  " + rules(s))
            .orElse("");
    return String.format(
        Locale.ROOT,
        "%7d  %s  %+6.2f %% |%s|%s",
        check.n(),
        check.at().atZone(ZoneOffset.UTC).toLocalDate(),
        check.deviation(),
        bar,
        signal);
  }

  private static int place(double share) {
    return (int) Math.round((share + 1) / 2 * (WIDTH - 1));
  }

  private static String rules(Signal signal) {
    return String.join("; ", signal.rules().stream().map(RunRule::text).toList());
  }
}
