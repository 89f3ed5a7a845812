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
import witnessmark.torque.Band;

/** The four pictures of a study. */
final class Pictures {
  private static final double MARGIN = 0.06;

  private final Analysis analysis;
  private final Band band;
  private final Scale scale;
  private final String torque;

  Pictures(Study study, Analysis analysis) {
    this.analysis = analysis;
    this.band = study.band();
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
    int most = histogram.counts().stream().mapToInt(Integer::intValue).max().orElse(1);
    plot.getRangeAxis().setRange(0, most * 1.3);
    band(plot, histogram);
    return Plots.chart("Values and band", plot);
  }

  private void band(XYPlot plot, Histogram histogram) {
    double low = histogram.start();
    double high = low + histogram.counts().size() * histogram.width();
    if (analysis.limits().lower().isPresent()) {
      double limit = analysis.limits().lower().getAsDouble();
      low = Math.min(low, limit);
      Plots.upright(plot, limit, "lower limit " + band.low().digits(), Ink.BAND, Ink.DASHED, false);
    }
    if (analysis.limits().upper().isPresent()) {
      double limit = analysis.limits().upper().getAsDouble();
      high = Math.max(high, limit);
      Plots.upright(plot, limit, "upper limit " + band.high().digits(), Ink.BAND, Ink.DASHED, true);
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
    around(plot);
    analysis.chart().ifPresent(c -> individuals(plot, c));
    String figures =
        analysis
            .chart()
            .filter(c -> c.sigma() > 0)
            .map(
                c ->
                    ": mean "
                        + scale.number(c.centre())
                        + ", control limits "
                        + scale.range(c.lower(), c.upper()))
            .orElse("");
    return Plots.chart("Values in the order of the work" + figures, plot);
  }

  private void individuals(XYPlot plot, IndividualsChart chart) {
    Plots.level(plot, chart.centre(), "", Ink.LINE, true);
    if (chart.sigma() > 0) {
      Plots.level(plot, chart.upper(), "mean + 3 sigma", Ink.DASHED, true);
      Plots.level(plot, chart.lower(), "mean - 3 sigma", Ink.DASHED, false);
    }
  }

  /** From the smallest to the largest of values and limits; without spread 1 % to both sides. */
  private void around(XYPlot plot) {
    double low = analysis.chart().map(IndividualsChart::lower).orElse(Double.MAX_VALUE);
    double high = analysis.chart().map(IndividualsChart::upper).orElse(-Double.MAX_VALUE);
    low = Math.min(low, analysis.summary().least());
    high = Math.max(high, analysis.summary().greatest());
    double least = Math.max(1e-6, Math.abs(high) / 100);
    room(plot, high > low ? low : low - least, high > low ? high : high + least);
  }

  private static void room(XYPlot plot, double low, double high) {
    double margin = (high - low) * 0.16;
    plot.getRangeAxis().setRange(low - margin, high + margin);
  }

  private XYPlot series(XYSeries values, XYSeries marked, String up) {
    int n = analysis.values().size();
    XYPlot plot = Plots.plot(new XYSeriesCollection(values), "value", up, Plots.dots(n, true));
    Plots.mark(plot, marked);
    NumberAxis across = (NumberAxis) plot.getDomainAxis();
    across.setStandardTickUnits(NumberAxis.createIntegerTickUnits());
    across.setRange(0.5 - n * 0.005, n + 0.5 + n * 0.005);
    return plot;
  }

  /** The difference of each value from the one before it; there must be two. */
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
    analysis
        .chart()
        .filter(c -> c.meanRange() > 0)
        .ifPresent(
            c -> {
              Plots.level(plot, c.meanRange(), "", Ink.LINE, true);
              Plots.level(plot, c.rangeUpper(), "limit of ranges", Ink.DASHED, true);
              double greatest = c.ranges().stream().mapToDouble(r -> r).max().orElse(0);
              plot.getRangeAxis().setRange(0, Math.max(c.rangeUpper(), greatest) * 1.2);
            });
    String figures =
        analysis
            .chart()
            .map(
                c ->
                    ": mean "
                        + scale.number(c.meanRange())
                        + ", limit "
                        + scale.text(c.rangeUpper()))
            .orElse("");
    return Plots.chart("Moving ranges, from each value to the next" + figures, plot);
  }

  /** The ordered values beside those of a normal distribution; there must be some spread. */
  JFreeChart normality() {
    List<Double> sorted = analysis.values().stream().sorted().toList();
    List<Double> scores = NormalScores.of(sorted.size());
    XYSeries points = new XYSeries("values", false);
    for (int i = 0; i < sorted.size(); i++) {
      points.add(sorted.get(i), scores.get(i));
    }
    XYSeriesCollection data = new XYSeriesCollection();
    data.addSeries(points);
    XYPlot plot = Plots.plot(data, torque, "normal score", Plots.dots(sorted.size(), false));
    line(plot, analysis.summary().mean(), analysis.summary().s(), -scores.get(0));
    return Plots.chart("Normal probability plot", plot);
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
