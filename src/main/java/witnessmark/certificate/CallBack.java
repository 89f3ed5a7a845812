package witnessmark.certificate;

import java.math.MathContext;
import java.math.RoundingMode;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import witnessmark.certificate.Columns.Cell;
import witnessmark.recall.Finding;
import witnessmark.recall.Recall;
import witnessmark.recall.Rejudged;
import witnessmark.report.BandText;
import witnessmark.report.Provenance;
import witnessmark.torque.Rounded;

/**
 * The list of units to call back after a wrench was found wrong, for people who work through it.
 */
public final class CallBack {
  private static final MathContext FIVE = new MathContext(5, RoundingMode.HALF_EVEN);
  private static final MathContext THREE = new MathContext(3, RoundingMode.HALF_EVEN);

  private CallBack() {}

  /**
   * The PDF.
   *
   * @param source when and from which log it is made
   */
  public static byte[] render(Recall recall, Paper paper, Provenance source) {
    Instant at = recall.finding().to();
    String title = "Call-back, wrench " + recall.wrench();
    return Book.bound(
        new Book.Cover(title, source.program(), at, Parties.NONE),
        paper,
        recall.finding().entry(),
        sheet -> {
          lay(sheet, recall, source);
          return finished(sheet, title, source);
        },
        Optional.empty());
  }

  private static void lay(Sheet sheet, Recall recall, Provenance source) {
    Pages.title(sheet, "CALL-BACK", "Wrench " + recall.wrench());
    sheet.down(10);
    Section.line(
        sheet,
        "Made on "
            + source.day()
            + " from the log "
            + source.log()
            + " as it was with "
            + source.size()
            + " entries; what came later is not in it.");
    Finding f = recall.finding();
    Section.line(
        sheet,
        "Found by "
            + f.told()
            + " (entry "
            + f.entry()
            + "), last good before by "
            + f.goodTold()
            + " (entry "
            + f.good()
            + "). "
            + recall.inQuestion());
    if (f.left().isEmpty()) {
      Section.line(sheet, "How it was left then is not on record: no error is assumed.");
    }
    recall.counts().forEach((o, n) -> Section.line(sheet, n + " " + o.words() + "."));
    Section.title(sheet, "Units to call back, in this order", 14);
    Section.line(
        sheet, recall.units().isEmpty() ? "None." : String.join(", ", recall.units()) + ".");
    joints(sheet, recall.joints().stream().filter(j -> j.outlook().isOut()).toList());
    Section.title(sheet, "How the figures come about", 60);
    Section.line(
        sheet,
        "A wrench with the deviation e shows X where the torque is X / (1 + e). The error is that of the"
            + " points as found, on straight lines between them; an asterisk marks a torque outside them."
            + " \"With time\" and \"with use\" say whether the joint is out of its band also had the error grown"
            + " evenly since the good calibration.");
    Closing.cautions(sheet);
  }

  private static void joints(Sheet sheet, List<Rejudged> joints) {
    if (joints.isEmpty()) {
      return;
    }
    Section.title(sheet, "Joints that may be out of their band", 60);
    Columns columns = new Columns(sheet, 16, 8, 19, 11, 12, 10, 12, 18, 17);
    Runnable heads =
        () ->
            columns.heads(
                "UNIT",
                "JOB",
                "FASTENER",
                "CRITICALITY",
                "SHOWN",
                "ERROR",
                "TRUE",
                "BAND",
                "OUT BY");
    heads.run();
    sheet.head(heads);
    joints.forEach(j -> columns.row(cells(j)));
    sheet.head(() -> {});
  }

  private static List<Cell> cells(Rejudged j) {
    return List.of(
        Cell.bold(Ink.TEXT, j.touch().unit()),
        Cell.of(j.touch().job()),
        Cell.of(j.touch().fastener()),
        Cell.of(j.touch().criticality().code()),
        Cell.of(j.touch().atFastener().toString()),
        Cell.of(String.format(Locale.ROOT, "%+.2f %%%s", j.error(), j.assumed() ? "*" : "")),
        Cell.bold(j.out() ? Ink.BAD : Ink.TEXT, Rounded.text(j.torque(), FIVE) + " N.m"),
        Cell.of(BandText.of(j.touch().low().toString(), j.touch().high().toString())),
        Cell.of(out(j)));
  }

  private static String out(Rejudged j) {
    if (!j.out()) {
      return "in band; out at a smaller error";
    }
    String also =
        j.outByTime() && j.outByOperations()
            ? ", also with time and with use"
            : j.outByTime()
                ? ", also with time"
                : j.outByOperations() ? ", also with use" : ", not with time or use";
    return Rounded.text(j.beyond(), THREE) + " %" + also;
  }

  private static List<List<Mark>> finished(Sheet sheet, String title, Provenance source) {
    List<List<Mark>> pages = new ArrayList<>();
    int count = sheet.pages().size();
    for (int i = 0; i < count; i++) {
      List<Mark> marks = new ArrayList<>(sheet.pages().get(i));
      if (i > 0) {
        marks.addAll(Pages.head(sheet, title));
      }
      marks.addAll(Pages.foot(sheet, source.text(), i + 1, count));
      pages.add(marks);
    }
    return pages;
  }
}
