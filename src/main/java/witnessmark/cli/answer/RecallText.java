package witnessmark.cli.answer;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import witnessmark.entry.Moments;
import witnessmark.recall.Finding;
import witnessmark.recall.Outlook;
import witnessmark.recall.Recall;
import witnessmark.recall.Rejudged;
import witnessmark.recall.Touch;
import witnessmark.report.BandText;
import witnessmark.report.Csv;
import witnessmark.report.Table;
import witnessmark.torque.Rounded;
import witnessmark.torque.Torque;

/** A recall for a terminal, a spreadsheet and programs. */
public final class RecallText {
  private static final MathContext FIVE = new MathContext(5, RoundingMode.HALF_EVEN);

  private static final List<String> COLUMNS =
      List.of(
          "unit",
          "job",
          "fastener",
          "pass",
          "criticality",
          "outlook",
          "beyondpercent",
          "entry",
          "at",
          "indicated",
          "unitoftorque",
          "errorpercent",
          "errorassumed",
          "truenm",
          "low",
          "high",
          "outbytime",
          "outbyoperations");

  private RecallText() {}

  public static String table(Recall recall, boolean all) {
    StringBuilder text = new StringBuilder(head(recall));
    Table table =
        new Table("UNIT", "FASTENER", "CRITICALITY", "SHOWN", "ERROR", "TRUE", "BAND", "");
    recall.joints().stream()
        .filter(j -> all || j.outlook().isOut())
        .forEach(
            j ->
                table.add(
                    j.touch().unit(),
                    j.touch().fastener(),
                    j.touch().criticality().code(),
                    j.touch().atFastener().toString(),
                    signed(j.error()) + " %" + (j.assumed() ? "*" : ""),
                    Rounded.text(j.torque(), FIVE) + " N.m",
                    BandText.of(j.touch().low().toString(), j.touch().high().toString()),
                    outlook(j)));
    if (!table.isEmpty()) {
      text.append('\n').append(table);
    }
    if (recall.joints().stream().anyMatch(Rejudged::assumed)) {
      text.append("* outside the points as found: the error of the nearest is assumed.\n");
    }
    return text.append('\n').append(foot(recall)).toString();
  }

  private static String head(Recall recall) {
    Finding f = recall.finding();
    return recall.wrench()
        + " as found by "
        + f.told()
        + " (entry "
        + f.entry()
        + "), against its last good calibration, "
        + f.goodTold()
        + " (entry "
        + f.good()
        + ").\n"
        + recall.inQuestion()
        + "\n"
        + (f.left().isEmpty()
            ? "How it was left then is not on record: no error is assumed.\n"
            : "");
  }

  private static String foot(Recall recall) {
    Map<Outlook, Long> counts = recall.counts();
    String units = String.join(", ", recall.units());
    return counts.entrySet().stream()
            .map(c -> c.getValue() + " " + c.getKey().words())
            .collect(Collectors.joining(";\n", "", ".\n"))
        + (units.isEmpty()
            ? "No unit is to be called back.\n"
            : "Call back first: " + units + ".\n")
        + "Computed from readings: the maker's instructions and qualified persons decide what is done.\n";
  }

  private static String outlook(Rejudged j) {
    String grown =
        (j.outByTime() ? ", also if grown with time" : "")
            + (j.outByOperations() ? ", also if grown with use" : "");
    return j.out()
        ? "OUT by "
            + Rounded.text(j.beyond(), new MathContext(3, RoundingMode.HALF_EVEN))
            + " %"
            + grown
        : j.outlook().code();
  }

  public static String csv(Recall recall) {
    return Csv.row(COLUMNS)
        + recall.joints().stream().map(j -> Csv.row(cells(j))).collect(Collectors.joining());
  }

  private static List<String> cells(Rejudged j) {
    Touch t = j.touch();
    return List.of(
        t.unit(),
        t.job(),
        t.fastener(),
        t.pass(),
        t.criticality().code(),
        j.outlook().code(),
        Rounded.text(j.beyond(), Rounded.RECORD),
        Long.toString(t.entry()),
        Moments.text(t.moment()),
        t.indicated().digits().text(),
        t.indicated().unit().symbol(),
        Rounded.text(j.error(), Rounded.RECORD),
        Boolean.toString(j.assumed()),
        Rounded.text(j.torque(), Rounded.RECORD),
        newtonMetres(t.low()),
        newtonMetres(t.high()),
        Boolean.toString(j.outByTime()),
        Boolean.toString(j.outByOperations()));
  }

  private static String newtonMetres(Torque torque) {
    return Rounded.text(torque.newtonMetres(), Rounded.RECORD);
  }

  public static Object json(Recall recall) {
    return Json.object(
        "wrench", recall.wrench(),
        "finding", recall.finding().entry(),
        "good", recall.finding().good(),
        "from", Moments.text(recall.finding().from()),
        "to", Moments.text(recall.finding().to()),
        "readings", recall.readings(),
        "units", recall.units(),
        "joints", recall.joints().stream().map(RecallText::object).toList());
  }

  private static Object object(Rejudged j) {
    List<String> cells = cells(j);
    Map<String, Object> object = new java.util.LinkedHashMap<>();
    for (int i = 0; i < COLUMNS.size(); i++) {
      object.put(COLUMNS.get(i), cells.get(i));
    }
    return object;
  }

  private static String signed(BigDecimal percent) {
    return String.format(
        java.util.Locale.ROOT, "%+.2f", percent.setScale(2, RoundingMode.HALF_EVEN));
  }
}
