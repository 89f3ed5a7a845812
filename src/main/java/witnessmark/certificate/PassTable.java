package witnessmark.certificate;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import witnessmark.certificate.Columns.Cell;
import witnessmark.record.Attempt;
import witnessmark.record.JobRecord;
import witnessmark.record.PassRecord;
import witnessmark.report.Phrases;
import witnessmark.report.Remarks;

/** Every pass of every fastener with all its readings, under what was asked of its group. */
final class PassTable {
  private static final String[] HEADS = {
    "FASTENER",
    "MEASURED",
    "IN ITS BAND",
    "DEGREES",
    "VERDICT",
    "WRENCH",
    "BY",
    "TIME, UTC",
    "ENTRY"
  };
  private static final int PLOT = 2;

  private final Sheet sheet;
  private final Columns columns;
  private final boolean oneDay;

  private PassTable(Sheet sheet, boolean oneDay) {
    this.sheet = sheet;
    this.columns = new Columns(sheet, 20, 14, 15, 11, 17, 11, 11, 10, 6);
    this.oneDay = oneDay;
  }

  static void draw(Sheet sheet, JobRecord job) {
    List<String> days =
        job.passes().stream()
            .flatMap(p -> p.attempts().stream())
            .map(a -> Phrases.day(a.taken().moment()))
            .distinct()
            .toList();
    boolean oneDay = days.size() <= 1;
    Section.title(sheet, "Fasteners" + (days.size() == 1 ? ", " + days.get(0) : ""), 90);
    PassTable table = new PassTable(sheet, oneDay);
    table.legend();
    table.columns.heads(HEADS);
    PassRecord before = null;
    for (PassRecord pass : job.passes()) {
      if (before == null || before.step() != pass.step() || before.pass() != pass.pass()) {
        table.open(pass);
      }
      before = pass;
      table.pass(pass);
    }
    sheet.head(() -> {});
    table.signs(job);
  }

  /** On the pages after a break the columns' names come again, and what the group is. */
  private void open(PassRecord pass) {
    sheet.head(() -> columns.heads(HEADS));
    group(pass, "");
    sheet.head(
        () -> {
          columns.heads(HEADS);
          group(pass, ", continued");
        });
  }

  private void group(PassRecord pass, String more) {
    float size = Columns.SIZE;
    Typeface bold = sheet.face(Face.BOLD);
    Typeface plain = sheet.face(Face.PLAIN);
    String title =
        pass.step().id() + ", " + pass.step().title() + ", " + pass.pass().name() + " pass" + more;
    List<String> titles = bold.wrapped(bold.shown(title), size, sheet.measure() - 8);
    String asked = Phrases.asked(pass.pass()) + "; " + Phrases.terms(pass.step());
    List<String> rest = plain.wrapped(plain.shown(asked), size, sheet.measure() - 8);
    float height = (titles.size() + rest.size()) * Sheet.leading(size) + 4;
    sheet.need(height + 14);
    sheet.add(Mark.box(Ink.PALE, Sheet.SIDE, sheet.y() - height, sheet.measure(), height));
    float baseline = sheet.y() - size - 1.5f;
    for (String line : titles) {
      sheet.put(Face.BOLD, size, Ink.TEXT, Sheet.SIDE + 4, baseline, line);
      baseline -= Sheet.leading(size);
    }
    for (String line : rest) {
      sheet.put(Face.PLAIN, size, Ink.TEXT, Sheet.SIDE + 4, baseline, line);
      baseline -= Sheet.leading(size);
    }
    sheet.down(height);
  }

  private void pass(PassRecord pass) {
    Optional<Attempt> shown = pass.shown();
    List<Attempt> also = pass.attempts().stream().filter(a -> a != shown.orElse(null)).toList();
    plotted(pass, shown, cells("", pass, shown, state(pass)));
    also.forEach(
        a ->
            plotted(
                pass,
                Optional.of(a),
                cells("↳", pass, Optional.of(a), a.undone() ? "undone" : "")));
  }

  private void plotted(PassRecord pass, Optional<Attempt> attempt, List<Cell> cells) {
    float middle = columns.row(cells);
    BandPlot.draw(
        sheet,
        pass.pass(),
        attempt,
        new float[] {columns.left(PLOT), columns.width(PLOT) - 3, middle});
  }

  private List<Cell> cells(String sign, PassRecord pass, Optional<Attempt> attempt, String state) {
    List<Cell> cells = new ArrayList<>();
    boolean also = !sign.isEmpty();
    String first =
        (also ? sign + " " : "") + attempt.map(Remarks::fastener).orElse(pass.fastener());
    cells.add(also ? Cell.quiet(first) : Cell.of(first));
    if (attempt.isEmpty()) {
      cells.addAll(List.of(Cell.of("–"), Cell.of(""), Cell.of(""), Cell.bold(Ink.BAD, state)));
      return cells;
    }
    Attempt a = attempt.get();
    String time = Phrases.time(a.taken().moment());
    Ink ink = also ? Ink.QUIET : Ink.TEXT;
    String torque = Remarks.torque(a, pass.pass().band());
    cells.add(also ? Cell.quiet(torque) : Cell.bold(ink, torque));
    cells.add(Cell.of(""));
    cells.add(plain(ink, Phrases.angle(a)));
    String verdict = Phrases.outcome(a) + (state.isEmpty() ? "" : ", " + state);
    cells.add(
        a.stands()
            ? plain(ink, verdict)
            : a.undone() ? Cell.quiet(verdict) : plain(Ink.BAD, verdict));
    cells.add(plain(ink, a.taken().event().wrench()));
    cells.add(plain(ink, a.operator().orElse("–")));
    cells.add(
        plain(
            ink,
            (oneDay ? time.substring(11) : time) + (a.taken().timing().tardy() ? " late" : "")));
    cells.add(plain(ink, Long.toString(a.entry())));
    return cells;
  }

  private static Cell plain(Ink ink, String text) {
    return new Cell(Face.PLAIN, ink, text);
  }

  private static String state(PassRecord pass) {
    return switch (pass.state()) {
      case STANDS -> "";
      case CONCEDED -> "used as it is, entry " + pass.by().getAsLong();
      case NONCONFORMING -> "NONCONFORMING";
      case PENDING -> "NOT DONE";
    };
  }

  private void signs(JobRecord job) {
    sheet.down(3);
    Remarks.signs(job).forEach(this::small);
  }

  private void legend() {
    small(
        "Measured: the wrench's reading digit for digit. In its band: green field from the lowest to the"
            + " highest acceptable torque, guard bands shaded at its ends, a dot where the torque at the"
            + " fastener lies, an arrowhead where it lies further out. The dot is for the eye; verdicts are"
            + " decided in exact decimals. \"↳\": every other reading on the same pass. Degrees: of the"
            + " pull, and \"of\" all pulls of the pass together. Entry: its"
            + " number in the log.");
    sheet.down(3);
  }

  private void small(String text) {
    sheet.say(Face.PLAIN, 6.4f, Ink.QUIET, Sheet.SIDE, text);
  }
}
