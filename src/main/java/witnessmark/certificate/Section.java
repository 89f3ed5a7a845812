package witnessmark.certificate;

import java.util.List;

/** Titles and paragraphs below each other. */
final class Section {
  static final float SIZE = 7.6f;
  private static final float TITLE = 10;
  private static final float BEFORE = 1.2f;

  private Section() {}

  /**
   * A title, on a new page where it and that much after it do not fit.
   *
   * @param room points
   */
  static void title(Sheet sheet, String title, float room) {
    Typeface bold = sheet.face(Face.BOLD);
    List<String> lines = bold.wrapped(bold.shown(title), TITLE, sheet.measure());
    sheet.need(8 + lines.size() * Sheet.leading(TITLE) + room);
    sheet.down(7);
    for (String line : lines) {
      sheet.down(Sheet.leading(TITLE));
      sheet.put(Face.BOLD, TITLE, Ink.TEXT, Sheet.SIDE, sheet.y(), line);
    }
    sheet.down(4);
  }

  /** A title and a paragraph a line; nothing at all where there is no line. */
  static void lines(Sheet sheet, String title, List<String> lines) {
    if (!lines.isEmpty()) {
      title(sheet, title, 14);
      lines.forEach(l -> line(sheet, l));
    }
  }

  /** A title and a paragraph a line, all of it on one page. */
  static void together(Sheet sheet, String title, List<String> lines) {
    Typeface plain = sheet.face(Face.PLAIN);
    float height = 0;
    for (String line : lines) {
      int count = plain.wrapped(plain.shown(line), SIZE, sheet.measure()).size();
      height += count * Sheet.leading(SIZE) + BEFORE;
    }
    title(sheet, title, height + 4);
    lines.forEach(l -> line(sheet, l));
  }

  static void line(Sheet sheet, String text) {
    sheet.down(BEFORE);
    sheet.say(Face.PLAIN, SIZE, Ink.TEXT, Sheet.SIDE, text);
  }

  static void indented(Sheet sheet, String text) {
    sheet.say(Face.PLAIN, SIZE, Ink.TEXT, Sheet.SIDE + 12, text);
  }

  static void bold(Sheet sheet, Ink ink, String text) {
    sheet.down(2);
    sheet.say(Face.BOLD, SIZE, ink, Sheet.SIDE, text);
  }
}
