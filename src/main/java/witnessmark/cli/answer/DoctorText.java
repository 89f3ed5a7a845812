package witnessmark.cli.answer;

import java.io.PrintWriter;
import java.util.List;
import witnessmark.doctor.Finding;
import witnessmark.doctor.Mark;
import witnessmark.report.Paragraph;

/** The doctor's findings, for people and for programs. */
public final class DoctorText {
  private static final String INDENT = " ".repeat(8);

  private final PrintWriter out;
  private String area = "";

  public DoctorText(PrintWriter out) {
    this.out = out;
  }

  /** Prints one, under its area's name. */
  public void print(Finding finding) {
    if (!finding.area().equals(area)) {
      area = finding.area();
      out.println(area);
    }
    // what is bad must be found in a long page
    String word = finding.mark() == Mark.BAD ? "BAD" : finding.mark().code();
    Paragraph.of(String.format("  %-4s  ", word) + finding.found(), Page.WIDTH, INDENT)
        .forEach(out::println);
    // on one line, so that a command in it can be copied
    finding.next().ifPresent(n -> out.println(INDENT + "-> " + n));
    out.flush();
  }

  /** Prints how many there are to be done. */
  public void end(List<Finding> found) {
    long bad = found.stream().filter(f -> f.mark() == Mark.BAD).count();
    long warn = found.stream().filter(f -> f.mark() == Mark.WARN).count();
    out.println();
    out.println(bad + " to be mended (BAD), " + warn + " to know about (warn).");
    if (bad == 0) {
      out.println(warn == 0 ? "All is well." : "Nothing keeps the bridge from its work.");
    }
    out.flush();
  }

  public static Object object(Finding finding) {
    return Json.object(
        "area", finding.area(),
        "mark", finding.mark().code(),
        "found", finding.found(),
        "next", finding.next().orElse(null));
  }
}
