package witnessmark.certificate;

import java.util.ArrayList;
import java.util.List;
import witnessmark.record.JobRecord;
import witnessmark.record.UnitRecord;

/** The pages of a certificate: what stands on them, and what each has at its head and foot. */
final class Pages {
  private static final float SMALL = 6.6f;

  private Pages() {}

  static void lay(Sheet sheet, UnitRecord unit, Proved proved, Parties parties) {
    front(sheet, unit);
    parties
        .told()
        .ifPresent(
            t -> {
              sheet.down(6);
              sheet.say(Face.PLAIN, Section.SIZE, Ink.QUIET, Sheet.SIDE, t);
            });
    for (JobRecord job : unit.jobs()) {
      JobPart.draw(sheet, job);
    }
    Closing.draw(sheet, proved);
  }

  private static void front(Sheet sheet, UnitRecord unit) {
    title(sheet, "RECORD OF TIGHTENING", "Unit " + unit.unit());
    if (unit.jobs().size() > 1) {
      sheet.down(10);
      sheet.say(
          Face.PLAIN,
          Section.SIZE,
          Ink.TEXT,
          Sheet.SIDE,
          unit.jobs().size() + " jobs, in the order in which they were opened.");
    }
  }

  /** What a document is, and of what. */
  static void title(Sheet sheet, String kind, String subject) {
    sheet.put(Face.BOLD, 7.5f, Ink.STRIPE, Sheet.SIDE + 12, sheet.y(), kind);
    float top = sheet.y() + 8;
    Typeface bold = sheet.face(Face.BOLD);
    for (String line : bold.wrapped(bold.shown(subject), 18, sheet.measure() - 12)) {
      sheet.down(22);
      sheet.put(Face.BOLD, 18, Ink.TEXT, Sheet.SIDE + 12, sheet.y(), line);
    }
    sheet.add(stripe(top, sheet.y() - 5));
    sheet.down(2);
  }

  /** The stripe of paint, aslant, as it is drawn over a tightened bolt. */
  private static Mark stripe(float top, float bottom) {
    float x = Sheet.SIDE;
    return Mark.shape(Ink.STRIPE, x + 1.5f, top, x + 6, top, x + 4.5f, bottom, x, bottom);
  }

  /** The pages with their heads and feet, now that their number is known. */
  static List<List<Mark>> finished(Sheet sheet, UnitRecord unit, Proved proved, String program) {
    List<List<Mark>> pages = new ArrayList<>();
    int count = sheet.pages().size();
    for (int i = 0; i < count; i++) {
      List<Mark> marks = new ArrayList<>();
      if (!unit.ended()) {
        marks.addAll(draft(sheet));
      }
      marks.addAll(sheet.pages().get(i));
      if (i > 0) {
        marks.addAll(head(sheet, "Record of tightening, unit " + unit.unit()));
      }
      String root = Closing.tree(proved.checkpoint()).replace("\n", " · ");
      marks.addAll(foot(sheet, program + " · " + root, i + 1, count));
      pages.add(marks);
    }
    return pages;
  }

  static List<Mark> head(Sheet sheet, String title) {
    Typeface plain = sheet.face(Face.PLAIN);
    float y = sheet.height() - 40;
    String whole = plain.shown(title);
    String shown = plain.wrapped(whole, SMALL, sheet.measure()).get(0);
    return List.of(
        Mark.text(plain, SMALL, Ink.QUIET, Sheet.SIDE, y, shown),
        Mark.line(Ink.RULE, 0.4f, Sheet.SIDE, y - 5, sheet.width() - Sheet.SIDE, y - 5));
  }

  static List<Mark> foot(Sheet sheet, String text, int page, int count) {
    Typeface plain = sheet.face(Face.PLAIN);
    float y = 32;
    String number = "page " + page + " of " + count;
    float right = sheet.width() - Sheet.SIDE - plain.width(number, SMALL);
    String left = plain.wrapped(plain.shown(text), SMALL, right - Sheet.SIDE - 8).get(0);
    return List.of(
        Mark.line(Ink.RULE, 0.4f, Sheet.SIDE, y + 10, sheet.width() - Sheet.SIDE, y + 10),
        Mark.text(plain, SMALL, Ink.QUIET, Sheet.SIDE, y, left),
        Mark.text(plain, SMALL, Ink.QUIET, right, y, number),
        Mark.text(
            plain,
            SMALL,
            Ink.QUIET,
            Sheet.SIDE,
            y - 9,
            "Torque is not clamp load, and a record does not make a joint safe."));
  }

  /** Said across the page, under everything else, and once above it. */
  private static List<Mark> draft(Sheet sheet) {
    Typeface bold = sheet.face(Face.BOLD);
    String word = "DRAFT: JOB NOT ENDED";
    float size = 34;
    float x = (sheet.width() - bold.width(word, size)) / 2;
    List<Mark> marks = new ArrayList<>();
    for (int i = 1; i <= 3; i++) {
      marks.add(Mark.text(bold, size, Ink.GHOST, x, sheet.height() * i / 4, word));
    }
    marks.add(Mark.text(bold, 9, Ink.BAD, Sheet.SIDE, sheet.height() - 28, word));
    return marks;
  }
}
