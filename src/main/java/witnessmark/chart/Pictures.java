package witnessmark.chart;

import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.StandardXYBarPainter;
import org.jfree.chart.renderer.xy.XYBarRenderer;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYIntervalSeries;
import org.jfree.data.xy.XYIntervalSeriesCollection;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import witnessmark.report.Scale;
import witnessmark.sample.Study;
import witnessmark.stats.Analysis;
import witnessmark.stats.Histogram;
import witnessmark.stats.IndividualsChart;
import witnessmark.stats.NormalScores;
import witnessmark.stats.Signal;

/** The four pictures of a study. */
final class Pictures {
  private static final double MARGIN = 0.06;

  private final Analysis analysis;
  private final Scale scale;
  private final String torque;

  Pictures(Study study, Analysis analysis) {
    this.analysis = analysis;
    this.scale = Scale.of(analysis.summary(), study.unit());
    this.torque = "torque, " + study.unit();
  }

  /** How many values lie where, beside the band. */
  JFreeChart histogram() {
    Histogram histogram = Histogram.of(analysis.values());
    XYIntervalSeries bins = new XYIntervalSeries("values");
    for (int i = 0; i < histogram.counts().size(); i++) {
      double low = histogram.start() + i * histogram.width();
      double high = low + histogram.width();
      int count = histogram.counts().get(i);
      bins.add((low + high) / 2, low, high, count, count, count);
    }
    XYIntervalSeriesCollection data = new XYIntervalSeriesCollection();
    data.addSeries(bins);
    XYBarRenderer bars = new XYBarRenderer();
    bars.setBarPainter(new StandardXYBarPainter());
    bars.setShadowVisible(false);
    bars.setSeriesPaint(0, Ink.FILL);
    bars.setDrawBarOutline(true);
    bars.setSeriesOutlinePaint(0, Ink.VALUE);
    bars.setSeriesOutlineStroke(0, Ink.HAIR);
    XYPlot plot = Plots.plot(data, torque, "values", bars);
    ((NumberAxis) plot.getRangeAxis()).setStandardTickUnits(NumberAxis.createIntegerTickUnits());
    plot.getRangeAxis().setLowerBound(0);
    plot.getRangeAxis().setUpperMargin(0.2);
    band(plot, histogram);
    return Plots.chart("Values and band", plot);
  }

  private void band(XYPlot plot, Histogram histogram) {
    double low = histogram.start();
    double high = low + histogram.counts().size() * histogram.width();
    if (analysis.limits().lower().isPresent()) {
      double limit = analysis.limits().lower().getAsDouble();
      low = Math.min(low, limit);
      Plots.upright(plot, limit, "lower limit", Ink.BAND, Ink.DASHED, false);
    }
    if (analysis.limits().upper().isPresent()) {
      double limit = analysis.limits().upper().getAsDouble();
      high = Math.max(high, limit);
      Plots.upright(plot, limit, "upper limit", Ink.BAND, Ink.DASHED, true);
    }
    double margin = (high - low) * MARGIN;
    plot.getDomainAxis().setRange(low - margin, high + margin);
  }

  /** The values in order, with control limits and what the run rules mark. */
  JFreeChart individuals() {
    XYSeries values = new XYSeries("values");
    for (int i = 0; i < analysis.values().size(); i++) {
      values.add(i + 1, analysis.values().get(i));
    }
    XYSeries marked = new XYSeries("marked");
    analysis
        .chart()
        .ifPresent(
            c -> {
              for (Signal s : c.signals()) {
                marked.add(s.index() + 1, c.values().get(s.index()));
              }
            });
    XYPlot plot = series(values, marked, torque);
    analysis.chart().ifPresent(c -> individuals(plot, c));
    return Plots.chart("Values in the order of the work", plot);
  }

  private void individuals(XYPlot plot, IndividualsChart chart) {
    Plots.level(plot, chart.centre(), "mean " + scale.number(chart.centre()), Ink.LINE, true);
    if (chart.sigma() > 0) {
      Plots.level(plot, chart.upper(), "+3 sigma " + scale.number(chart.upper()), Ink.DASHED, true);
      Plots.level(
          plot, chart.lower(), "-3 sigma " + scale.number(chart.lower()), Ink.DASHED, false);
      double low = Math.min(chart.lower(), analysis.summary().least());
      double high = Math.max(chart.upper(), analysis.summary().greatest());
      room(plot, low, high);
    }
  }

  private static void room(XYPlot plot, double low, double high) {
    double margin = (high - low) * 0.16;
    plot.getRangeAxis().setRange(low - margin, high + margin);
  }

  private XYPlot series(XYSeries values, XYSeries marked, String up) {
    XYSeriesCollection data = new XYSeriesCollection();
    data.addSeries(values);
    data.addSeries(marked);
    int n = analysis.values().size();
    XYPlot plot = Plots.plot(data, "value", up, Plots.dots(n, true));
    NumberAxis across = (NumberAxis) plot.getDomainAxis();
    across.setStandardTickUnits(NumberAxis.createIntegerTickUnits());
    across.setRange(0.5 - n * 0.005, n + 0.5 + n * 0.005);
    return plot;
  }

  /** The difference of each value from the one before it. */
  JFreeChart ranges() {
    XYSeries ranges = new XYSeries("ranges");
    XYSeries marked = new XYSeries("marked");
    analysis
        .chart()
        .ifPresent(
            c -> {
              for (int i = 0; i < c.ranges().size(); i++) {
                ranges.add(i + 2, c.ranges().get(i));
              }
              c.wideRanges().forEach(i -> marked.add(i + 1, c.ranges().get(i - 1)));
            });
    XYPlot plot = series(ranges, marked, "range, " + scale.unit());
    plot.setNoDataMessage("One value makes no moving range.");
    analysis
        .chart()
        .filter(c -> c.meanRange() > 0)
        .ifPresent(
            c -> {
              String mean = "mean " + scale.number(c.meanRange());
              Plots.level(plot, c.meanRange(), mean, Ink.LINE, true);
              String limit = "limit " + scale.number(c.rangeUpper());
              Plots.level(plot, c.rangeUpper(), limit, Ink.DASHED, true);
              double greatest = c.ranges().stream().mapToDouble(r -> r).max().orElse(0);
              plot.getRangeAxis().setRange(0, Math.max(c.rangeUpper(), greatest) * 1.2);
            });
    return Plots.chart("Moving ranges: from each value to the next", plot);
  }

  /** The ordered values beside those of a normal distribution. */
  JFreeChart normality() {
    List<Double> sorted = analysis.values().stream().sorted().toList();
    List<Double> scores = NormalScores.of(sorted.size());
    XYSeries points = new XYSeries("values", false);
    for (int i = 0; i < sorted.size(); i++) {
      points.add(sorted.get(i), scores.get(i));
    }
    XYSeriesCollection data = new XYSeriesCollection();
    data.addSeries(points);
    XYPlot plot =
        Plots.plot(data, torque, "standard normal score", Plots.dots(sorted.size(), false));
    double s = analysis.summary().s();
    if (s > 0) {
      line(plot, analysis.summary().mean(), s, -scores.get(0));
    }
    return Plots.chart("Normal probability plot: normal values follow the line", plot);
  }

  private static void line(XYPlot plot, double mean, double s, double reach) {
    XYSeries line = new XYSeries("normal");
    line.add(mean - reach * s, -reach);
    line.add(mean + reach * s, reach);
    XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
    renderer.setSeriesPaint(0, Ink.LIMIT);
    renderer.setSeriesStroke(0, Ink.LINE);
    plot.setDataset(1, new XYSeriesCollection(line));
    plot.setRenderer(1, renderer);
  }
}
