package witnessmark.certificate;

import java.util.ArrayList;
import java.util.List;

/** Cells side by side whose texts break into lines, so that a row is as high as its highest. */
final class Columns {
  static final float SIZE = 7.2f;
  private static final float GAP = 5;
  private static final float PAD = 1.6f;

  private final Sheet sheet;
  private final float[] left;
  private final float[] wide;

  /**
   * @param weights the columns' shares of the width
   */
  Columns(Sheet sheet, float... weights) {
    this.sheet = sheet;
    this.left = new float[weights.length];
    this.wide = new float[weights.length];
    float all = 0;
    for (float w : weights) {
      all += w;
    }
    float x = Sheet.SIDE;
    for (int i = 0; i < weights.length; i++) {
      left[i] = x;
      wide[i] = sheet.measure() * weights[i] / all - GAP;
      x += wide[i] + GAP;
    }
  }

  /** A text in a cell. */
  record Cell(Face face, Ink ink, String text) {
    static Cell of(String text) {
      return new Cell(Face.PLAIN, Ink.TEXT, text);
    }

    static Cell quiet(String text) {
      return new Cell(Face.PLAIN, Ink.QUIET, text);
    }

    static Cell bold(Ink ink, String text) {
      return new Cell(Face.BOLD, ink, text);
    }
  }

  float left(int column) {
    return left[column];
  }

  float width(int column) {
    return wide[column];
  }

  /** How high the row is. */
  float height(List<Cell> cells) {
    int lines = 1;
    for (int i = 0; i < cells.size(); i++) {
      lines = Math.max(lines, lines(cells.get(i), i).size());
    }
    return lines * Sheet.leading(SIZE) + 2 * PAD;
  }

  /**
   * Draws a row with a rule below it, on a new page where it does not fit.
   *
   * @return the middle of its first line
   */
  float row(List<Cell> cells) {
    float height = height(cells);
    sheet.need(height);
    float top = sheet.y() - PAD;
    for (int i = 0; i < cells.size(); i++) {
      float baseline = top - SIZE;
      for (String line : lines(cells.get(i), i)) {
        sheet.put(cells.get(i).face(), SIZE, cells.get(i).ink(), left[i], baseline, line);
        baseline -= Sheet.leading(SIZE);
      }
    }
    sheet.down(height);
    float end = sheet.width() - Sheet.SIDE;
    sheet.add(Mark.line(Ink.RULE, 0.3f, Sheet.SIDE, sheet.y(), end, sheet.y()));
    return top - SIZE * 0.64f;
  }

  private List<String> lines(Cell cell, int column) {
    if (cell.text().isEmpty()) {
      return new ArrayList<>();
    }
    Typeface type = sheet.face(cell.face());
    return type.wrapped(type.shown(cell.text()), SIZE, wide[column]);
  }

  /** The columns' names, over a thicker rule. */
  void heads(String... names) {
    float baseline = sheet.y() - 8;
    for (int i = 0; i < names.length; i++) {
      sheet.put(Face.BOLD, 6.2f, Ink.QUIET, left[i], baseline, names[i]);
    }
    sheet.down(11.5f);
    float end = sheet.width() - Sheet.SIDE;
    sheet.add(Mark.line(Ink.QUIET, 0.7f, Sheet.SIDE, sheet.y(), end, sheet.y()));
  }
}
