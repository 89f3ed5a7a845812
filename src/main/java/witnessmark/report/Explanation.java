package witnessmark.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import witnessmark.entry.Entry;
import witnessmark.entry.Judged;
import witnessmark.entry.Moments;
import witnessmark.job.Due;
import witnessmark.job.JobState;
import witnessmark.match.Weigh;
import witnessmark.match.Weighed;
import witnessmark.torque.Angle;
import witnessmark.torque.TorqueEvent;
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
              + e.event().breakaway().map(b -> ", began to turn at " + b).orElse("")
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

  /**
   * What the event met, what speaks for and against each fastener, and which rule decided. The
   * entry counts: this version's rules only help to read it.
   *
   * @param job before the event
   * @param today this version's decision
   */
  public static List<String> why(Entry entry, JobState job, TorqueEvent event, Judged today) {
    Judged judged =
        entry instanceof Entry.Assigned a
            ? a.judged()
            : entry instanceof Entry.Reread r ? r.judged() : ((Entry.TorqueTaken) entry).judged();
    Optional<String> named = entry instanceof Entry.Assigned ? judged.fastener() : Optional.empty();
    List<String> lines = new ArrayList<>();
    lines.add("Before it");
    lines.add("  done        " + job.passesDone() + " of " + job.plan().passes() + " passes");
    lines.add("  due         " + Due.of(job).text());
    lines.add("What it could have been on");
    List<Weighed> weighed = Weigh.of(job, event, named);
    weighed.forEach(w -> weighed(lines, w));
    if (weighed.isEmpty()) {
      lines.add("  nothing of this job");
    }
    lines.add("What decided");
    lines.add("  rule        " + Reasoning.rule(judged.reason()));
    lines.add("  otherwise   " + Reasoning.otherwise(judged.reason()));
    if (!decidedAlike(judged, today)) {
      lines.add(
          "  today       This version would decide "
              + today.reason().code()
              + today.fastener().map(f -> " on " + f).orElse("")
              + ", "
              + today.effect().code()
              + ". What the entry says counts.");
    }
    return lines;
  }

  private static void weighed(List<String> lines, Weighed w) {
    lines.add("  " + w.fastener() + ", " + w.pass() + " pass, " + w.role());
    w.supports().forEach(s -> lines.add("    for       " + s));
    w.against().forEach(s -> lines.add("    against   " + s));
  }

  private static boolean decidedAlike(Judged one, Judged other) {
    return one.reason() == other.reason()
        && one.fastener().equals(other.fastener())
        && one.pass().equals(other.pass())
        && one.verdict().equals(other.verdict())
        && one.effect() == other.effect();
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
    j.atFastener().ifPresent(t -> lines.add("  at fastener " + t));
    j.rule()
        .ifPresent(
            r ->
                lines.add(
                    "  rule        "
                        + r.code()
                        + j.guard().map(w -> ", guard band " + w).orElse("")
                        + j.guardFactor().map(f -> ", factor " + f).orElse("")));
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
