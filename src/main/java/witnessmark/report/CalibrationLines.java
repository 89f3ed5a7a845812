package witnessmark.report;

import java.math.RoundingMode;
import java.util.List;
import java.util.stream.Collectors;
import witnessmark.entry.CalibrationPoint;
import witnessmark.entry.Entry;
import witnessmark.report.Line.Cells;
import witnessmark.wrench.Deviation;

/** Fills the rows of entries about calibrations and checks. */
final class CalibrationLines {
  private CalibrationLines() {}

  static void fill(Cells c, Entry entry) {
    if (entry instanceof Entry.CalibrationRuled e) {
      c.set("operator", e.by());
      c.set(
          "text",
          "Wrenches of type "
              + e.type().code()
              + ": "
              + e.deviation()
              + " %"
              + e.smallUpTo()
                  .map(t -> ", up to " + t + " " + e.smallDeviation().get() + " %")
                  .orElse("")
              + ", "
              + e.readings()
              + " readings a point, due after "
              + e.months()
              + " months or "
              + e.operations()
              + " operations.");
    } else if (entry instanceof Entry.WrenchCalibrated e) {
      c.set("wrench", e.wrench()).set("operator", e.by());
      c.set(
          "text",
          "Calibrated by "
              + e.laboratory()
              + ", certificate "
              + e.certificate()
              + ", due "
              + e.due()
              + " or after "
              + e.operations()
              + " operations. "
              + (e.found().isEmpty() ? "" : "As found: " + points(e.found()) + ". ")
              + "As left: "
              + points(e.left())
              + (e.leftWithin() ? "." : ": OUT OF TOLERANCE."));
    } else if (entry instanceof Entry.WrenchChecked e) {
      c.set("wrench", e.wrench()).set("operator", e.by());
      c.set(
          "text",
          "Checked on "
              + e.tester()
              + ": "
              + points(e.points())
              + (e.within() ? "." : ": OUT OF TOLERANCE."));
    } else if (entry instanceof Entry.CalibrationEnded e) {
      c.set("wrench", e.wrench()).set("operator", e.by());
      c.set(
          "text",
          "Calibration no longer in force from "
              + e.from()
              + ": "
              + e.cause().code()
              + e.because().map(b -> " (" + b + ")").orElse("")
              + ".");
    } else {
      throw new IllegalStateException("no row for " + entry.getClass());
    }
  }

  private static String points(List<CalibrationPoint> points) {
    return points.stream().map(CalibrationLines::point).collect(Collectors.joining(", "));
  }

  private static String point(CalibrationPoint p) {
    return String.format(
        java.util.Locale.ROOT,
        "%s %+.2f %% (of %s %%)",
        p.indicated(),
        Deviation.mean(p).setScale(2, RoundingMode.HALF_EVEN),
        p.permissible());
  }
}
