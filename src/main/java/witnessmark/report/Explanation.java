package witnessmark.report;

import java.util.ArrayList;
import java.util.List;
import witnessmark.entry.Entry;
import witnessmark.entry.Judged;
import witnessmark.entry.Moments;
import witnessmark.torque.Angle;
import witnessmark.torque.Verdict;

/** Why an entry says what it says, in lines for a person. */
public final class Explanation {
  private Explanation() {}

  public static List<String> of(long n, Entry entry) {
    List<String> lines = new ArrayList<>();
    Line line = Line.of(n, entry);
    lines.add("Entry " + n + ", " + line.cell("kind") + ", taken " + Moments.text(entry.at()));
    if (entry instanceof Entry.TorqueTaken e) {
      lines.add("  wrench      " + e.event().wrench() + number(e));
      lines.add(
          "  reading     "
              + e.event().torque()
              + e.event().angle().map(Angle::toString).map(a -> ", " + a + " degrees").orElse("")
              + ", "
              + e.event().direction().code());
      lines.add("  happened    " + happened(e));
      lines.add("  came by     " + e.source());
      lines.add("  as sent     " + e.raw().strip());
      lines.add("  job         " + e.job().orElse("none open at " + e.station()));
      lines.addAll(judged(e.judged()));
    } else if (entry instanceof Entry.Assigned e) {
      lines.add("  assigns     entry " + e.assigns() + ", by " + e.by() + ": " + e.because());
      lines.addAll(judged(e.judged()));
    } else if (entry instanceof Entry.Reread e) {
      lines.add("  rereads     entry " + e.rereads() + ", because of entry " + e.because());
      lines.addAll(judged(e.judged()));
    } else {
      lines.add("  " + line.cell("text"));
    }
    return lines;
  }

  private static String happened(Entry.TorqueTaken e) {
    String clock =
        switch (e.timing().clock()) {
          case "corrected" ->
              " by the wrench's clock and " + e.timing().offset().orElseThrow() + " s";
          case "bridge" -> ", when the bridge took it; no time of the wrench to go by";
          default -> " by the wrench's clock";
        };
    return Moments.text(e.moment())
        + clock
        + (e.timing().tardy() ? ", give or take 15 s; came late and stands there" : "");
  }

  private static String number(Entry.TorqueTaken e) {
    return e.event().number().isPresent()
        ? ", its event " + e.event().number().getAsLong()
        : ", no event number: a repeat could not be told for sure";
  }

  private static List<String> judged(Judged j) {
    List<String> lines = new ArrayList<>();
    lines.add(
        "  placed on   "
            + j.fastener()
                .map(f -> f + j.pass().map(p -> ", " + p + " pass").orElse(""))
                .orElse("no fastener"));
    lines.add("  because     " + j.reason().code());
    if (!j.alternatives().isEmpty()) {
      lines.add("  could be    " + String.join(", ", j.alternatives()));
    }
    j.objections().forEach(o -> lines.add("  objection   " + o.code()));
    j.low()
        .ifPresent(low -> lines.add("  band        " + BandText.of(low, j.high().orElseThrow())));
    j.angleLow()
        .ifPresent(
            a ->
                lines.add(
                    "  angle       " + a + " to " + j.angleHigh().orElseThrow() + " degrees"));
    j.angleTotal().ifPresent(a -> lines.add("  turned      " + a + " degrees over all pulls"));
    lines.add("  verdict     " + j.verdict().map(Verdict::code).orElse("none"));
    lines.add("  effect      " + j.effect().code());
    if (!j.undoes().isEmpty()) {
      lines.add("  undoes      " + String.join(", ", j.undoes()));
    }
    lines.add("  " + j.text());
    return lines;
  }
}
