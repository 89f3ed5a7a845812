package witnessmark.cli.answer;

import witnessmark.report.BandText;
import witnessmark.report.Line;
import witnessmark.torque.Visible;

/** A line of the trace for a terminal. */
public final class TraceText {
  public static final String HEAD =
      String.format(
          "%7s  %-20s  %-26s  %-12s  %-15s  %-13s  %s%n",
          "ENTRY", "TIME (UTC)", "FASTENER OR KIND", "TORQUE", "WRENCH OR BADGE", "VERDICT", "");

  private TraceText() {}

  public static String of(Line line) {
    String what =
        line.cell("fastener").isEmpty() ? "(" + line.cell("kind") + ")" : line.cell("fastener");
    String torque =
        line.cell("torque").isEmpty() ? "" : line.cell("torque") + " " + line.cell("unit");
    String effect = line.cell("effect").isEmpty() ? "" : "(" + line.cell("effect") + ")";
    String verdict = line.cell("verdict").isEmpty() ? effect : line.cell("verdict");
    return Visible.of(row(line, what, torque, verdict)) + System.lineSeparator();
  }

  private static String row(Line line, String what, String torque, String verdict) {
    return String.format(
        "%7s  %-20s  %-26s  %-12s  %-15s  %-13s  %s",
        line.cell("entry"),
        line.cell("at").substring(0, 19) + "Z",
        what,
        torque,
        line.cell("wrench").isEmpty() ? line.cell("operator") : line.cell("wrench"),
        verdict,
        text(line));
  }

  /** A credited reading needs no sentence: its pass and band say it. */
  private static String text(Line line) {
    return line.cell("effect").equals("credited")
        ? line.cell("pass") + " pass, " + BandText.of(limit(line, "low"), limit(line, "high"))
        : line.cell("text");
  }

  private static String limit(Line line, String column) {
    return line.cell(column) + " " + line.cell(column + "unit");
  }
}
