package witnessmark.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.font.FontRenderContext;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.JFreeChart;
import witnessmark.report.Figure;
import witnessmark.report.StudyFigures;
import witnessmark.report.StudyNotes;
import witnessmark.sample.Study;
import witnessmark.stats.Analysis;
import witnessmark.stats.Capability;

/** A page of ISO A4 upright, in points, with all there is to show of a study. */
final class Sheet {
  static final int WIDTH = 595;
  static final int HEIGHT = 842;

  private static final int LEFT = 40;
  private static final int RIGHT = WIDTH - 40;

  /** Where the pictures beside the figures begin, and how high they are. */
  private static final int MIDDLE = 336;

  private static final int SMALL = 118;
  private static final int BOTTOM = HEIGHT - 40;
  private static final float BODY = 8.5f;
  private static final float SMALL_TYPE = 6.5f;
  private static final float LEADING = 11.5f;

  private final Graphics2D page;
  private float y = 48;

  private Sheet(Graphics2D page) {
    this.page = page;
    page.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    page.setRenderingHint(
        RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
    page.setColor(Color.WHITE);
    page.fill(new Rectangle2D.Double(0, 0, WIDTH, HEIGHT));
  }

  /**
   * Draws the page.
   *
   * @throws IllegalArgumentException when the study has no value
   */
  static void draw(Graphics2D page, Study study, Foot foot) {
    Sheet sheet = new Sheet(page);
    sheet.draw(study);
    sheet.foot(foot);
  }

  private void draw(Study study) {
    Analysis analysis = study.analysis();
    heading(study);
    List<Figure> figures = new ArrayList<>(StudyFigures.of(study, analysis));
    figures.addAll(StudyFigures.tries(study));
    float top = y - 10;
    figures(figures);
    if (analysis.capability() instanceof Capability.Withheld w) {
      y += LEADING / 2;
      String because = "No index is stated. " + String.join(" ", w.because());
      paragraph(Face.BOLD, because, MIDDLE - 14);
    }
    Pictures pictures = new Pictures(study, analysis);
    picture(pictures.histogram(), MIDDLE, top, RIGHT, top + SMALL);
    if (analysis.summary().s() > 0) {
      picture(pictures.normality(), MIDDLE, top + SMALL, RIGHT, top + 2 * SMALL);
    }
    y = Math.max(y, top + 2 * SMALL) + 8;
    List<String> notes = notes(study, analysis);
    float words =
        notes.stream().mapToInt(n -> wrapped(Face.PLAIN, n, RIGHT).size()).sum() * LEADING;
    float room = BOTTOM - LEADING - words - y;
    float each = Math.max(110, Math.min(200, room / 2));
    picture(pictures.individuals(), LEFT - 4, y, RIGHT, y + each);
    y += each;
    if (analysis.chart().isPresent()) {
      picture(pictures.ranges(), LEFT - 4, y, RIGHT, y + each);
      y += each;
    }
    y += LEADING;
    notes.forEach(n -> paragraph(Face.PLAIN, n, RIGHT));
  }

  private void foot(Foot foot) {
    page.setStroke(Ink.HAIR);
    page.setColor(Ink.LIMIT);
    page.draw(new Line2D.Double(LEFT, HEIGHT - 30, RIGHT, HEIGHT - 30));
    page.setFont(Face.PLAIN.of(SMALL_TYPE));
    page.drawString(foot.source(), LEFT, HEIGHT - 20);
    double width =
        page.getFont()
            .getStringBounds(foot.number(), new FontRenderContext(null, true, true))
            .getWidth();
    page.drawString(foot.number(), (float) (RIGHT - width), HEIGHT - 20);
  }

  private static List<String> notes(Study study, Analysis analysis) {
    List<String> notes = new ArrayList<>();
    if (analysis
        .chart()
        .filter(c -> !c.signals().isEmpty() || !c.wideRanges().isEmpty())
        .isPresent()) {
      notes.add("◇ marks what a run rule shows, or a range above its limit.");
    }
    List<String> omitted = StudyNotes.omissions(study.omitted());
    if (!omitted.isEmpty()) {
      notes.add("Not among the values: " + String.join("; ", omitted) + ".");
    }
    notes.addAll(StudyNotes.cautions(study, analysis));
    notes.addAll(StudyNotes.ALWAYS);
    return notes;
  }

  private void heading(Study study) {
    page.setColor(Ink.TEXT);
    page.setFont(Face.BOLD.of(14));
    page.drawString("Torque study", LEFT, y);
    y += 16;
    page.setFont(Face.PLAIN.of(10));
    page.drawString(study.title(), LEFT, y);
    y += 13;
    page.setFont(Face.PLAIN.of(BODY));
    page.drawString("Asked for: " + study.asked(), LEFT, y);
    y += 8;
    page.setStroke(Ink.HAIR);
    page.setColor(Ink.LIMIT);
    page.draw(new Line2D.Double(LEFT, y, RIGHT, y));
    y += 20;
  }

  private void figures(List<Figure> figures) {
    page.setColor(Ink.TEXT);
    for (Figure figure : figures) {
      boolean index = figure.name().length() <= 3;
      page.setFont(Face.PLAIN.of(BODY));
      page.drawString(figure.name(), LEFT, y);
      page.setFont((index ? Face.BOLD : Face.PLAIN).of(BODY));
      page.drawString(figure.text(), LEFT + 105, y);
      y += LEADING;
    }
  }

  private void picture(JFreeChart chart, double left, double top, double right, double bottom) {
    chart.draw(page, new Rectangle2D.Double(left, top, right - left, bottom - top));
  }

  private void paragraph(Face face, String text, int right) {
    page.setColor(Ink.TEXT);
    page.setFont(face.of(BODY));
    for (String line : wrapped(face, text, right)) {
      page.drawString(line, LEFT, y);
      y += LEADING;
    }
  }

  private static List<String> wrapped(Face face, String text, int right) {
    FontRenderContext context = new FontRenderContext(null, true, true);
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : text.split(" ")) {
      String longer = line.isEmpty() ? word : line + " " + word;
      if (!line.isEmpty()
          && face.of(BODY).getStringBounds(longer, context).getWidth() > right - LEFT) {
        lines.add(line.toString());
        line.setLength(0);
        line.append(word);
      } else {
        line.setLength(0);
        line.append(longer);
      }
    }
    lines.add(line.toString());
    return lines;
  }
}
