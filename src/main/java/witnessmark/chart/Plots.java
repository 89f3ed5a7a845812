package witnessmark.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYItemRenderer;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.title.TextTitle;
import org.jfree.chart.ui.HorizontalAlignment;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleAnchor;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.XYDataset;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;

/** What all four pictures have in common. */
final class Plots {
  private static final float SMALL = 7.5f;
  private static final double DOT = 3.2;
  private static final double DIAMOND = 4.2;

  private Plots() {}

  /** A plot with named axes, white, with a faint grid. */
  static XYPlot plot(XYDataset data, String across, String up, XYItemRenderer renderer) {
    XYPlot plot = new XYPlot(data, axis(across), axis(up), renderer);
    plot.setBackgroundPaint(Color.WHITE);
    plot.setDomainGridlinesVisible(false);
    plot.setRangeGridlinePaint(Ink.FAINT);
    plot.setRangeGridlineStroke(Ink.HAIR);
    plot.setOutlinePaint(Ink.LIMIT);
    plot.setOutlineStroke(Ink.HAIR);
    plot.setAxisOffset(RectangleInsets.ZERO_INSETS);
    plot.setInsets(new RectangleInsets(2, 2, 2, 8));
    return plot;
  }

  private static NumberAxis axis(String name) {
    NumberAxis axis = new NumberAxis(name);
    axis.setLabelFont(Face.PLAIN.of(SMALL));
    axis.setTickLabelFont(Face.PLAIN.of(SMALL));
    axis.setLabelPaint(Ink.TEXT);
    axis.setTickLabelPaint(Ink.TEXT);
    axis.setAxisLinePaint(Ink.LIMIT);
    axis.setTickMarkPaint(Ink.LIMIT);
    axis.setAutoRangeIncludesZero(false);
    return axis;
  }

  static JFreeChart chart(String title, XYPlot plot) {
    JFreeChart chart = new JFreeChart(null, null, plot, false);
    TextTitle heading = new TextTitle(title, Face.BOLD.of(8.5f));
    heading.setPaint(Ink.TEXT);
    heading.setHorizontalAlignment(HorizontalAlignment.LEFT);
    heading.setPadding(new RectangleInsets(0, 4, 2, 0));
    chart.setTitle(heading);
    chart.setBackgroundPaint(Color.WHITE);
    chart.setPadding(RectangleInsets.ZERO_INSETS);
    chart.setTextAntiAlias(true);
    return chart;
  }

  /** Dots, joined by a thin line where asked for. */
  static XYLineAndShapeRenderer dots(int n, boolean joined) {
    XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(joined, true);
    double size = n > 150 ? DOT * 0.6 : DOT;
    renderer.setSeriesShape(0, new Ellipse2D.Double(-size / 2, -size / 2, size, size));
    renderer.setSeriesPaint(0, Ink.VALUE);
    renderer.setSeriesStroke(0, Ink.HAIR);
    renderer.setDrawOutlines(false);
    renderer.setDrawSeriesLineAsPath(true);
    return renderer;
  }

  /** Open diamonds around the points that are marked. */
  static void mark(XYPlot plot, XYSeries points) {
    XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(false, true);
    renderer.setSeriesShape(0, diamond());
    renderer.setSeriesShapesFilled(0, false);
    renderer.setSeriesPaint(0, Ink.SIGNAL);
    renderer.setSeriesOutlineStroke(0, Ink.LINE);
    plot.setDataset(1, new XYSeriesCollection(points));
    plot.setRenderer(1, renderer);
  }

  private static Path2D diamond() {
    Path2D path = new Path2D.Double();
    path.moveTo(0, -DIAMOND);
    path.lineTo(DIAMOND, 0);
    path.lineTo(0, DIAMOND);
    path.lineTo(-DIAMOND, 0);
    path.closePath();
    return path;
  }

  /** A horizontal line with its name at the right end, above or below it. */
  static void level(XYPlot plot, double at, String name, BasicStroke stroke, boolean above) {
    ValueMarker marker = marker(at, name, Ink.LIMIT, stroke);
    marker.setLabelAnchor(above ? RectangleAnchor.TOP_RIGHT : RectangleAnchor.BOTTOM_RIGHT);
    marker.setLabelTextAnchor(above ? TextAnchor.BOTTOM_RIGHT : TextAnchor.TOP_RIGHT);
    plot.addRangeMarker(marker, Layer.BACKGROUND);
  }

  /** A vertical line with its name at the top, to the left or the right of it. */
  static void upright(
      XYPlot plot, double at, String name, Color ink, BasicStroke stroke, boolean left) {
    ValueMarker marker = marker(at, name, ink, stroke);
    marker.setLabelAnchor(left ? RectangleAnchor.TOP_LEFT : RectangleAnchor.TOP_RIGHT);
    marker.setLabelTextAnchor(left ? TextAnchor.TOP_RIGHT : TextAnchor.TOP_LEFT);
    plot.addDomainMarker(marker, Layer.FOREGROUND);
  }

  private static ValueMarker marker(double at, String name, Color ink, BasicStroke stroke) {
    ValueMarker marker = new ValueMarker(at, ink, stroke);
    marker.setLabel(name);
    marker.setLabelFont(Face.PLAIN.of(SMALL));
    marker.setLabelPaint(ink);
    marker.setLabelOffset(new RectangleInsets(2, 3, 2, 3));
    marker.setLabelBackgroundColor(new Color(0, 0, 0, 0));
    return marker;
  }
}
