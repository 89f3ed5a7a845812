package witnessmark.report;

import java.util.ArrayList;
import java.util.List;
import witnessmark.record.Attempt;
import witnessmark.record.Deviation;
import witnessmark.record.GateRecord;
import witnessmark.record.JobRecord;
import witnessmark.record.Numbered;
import witnessmark.record.PassRecord;
import witnessmark.record.UnitRecord;
import witnessmark.torque.Visible;

/** A unit's record as a page for a terminal, of 100 columns where nothing in it is wider. */
public final class RecordText {
  private static final int WIDTH = 100;
  private static final String NOTHING = "  none";

  private final List<String> lines = new ArrayList<>();

  private RecordText() {}

  /** The lines of the page. */
  public static List<String> of(UnitRecord unit) {
    RecordText text = new RecordText();
    text.lines.add("UNIT " + unit.unit());
    unit.jobs().forEach(text::job);
    return text.lines;
  }

  private void job(JobRecord job) {
    lines.add("");
    say(
        "JOB "
            + job.job()
            + " "
            + job.outcome().code()
            + ", "
            + job.procedure().id()
            + " revision "
            + job.procedure().revision()
            + ", "
            + job.procedure().title(),
        "");
    for (Numbered n : job.life()) {
      say("  " + Phrases.when(n) + "  " + Phrases.life(n.entry()) + " (entry " + n.n() + ")");
    }
    say("  " + Phrases.summary(job) + ".");
    say("  " + Phrases.wholeness(job));
    Remarks.nameless(job).ifPresent(n -> say("  " + n));
    job.foundLater().forEach(f -> say("  CAUTION: " + Remarks.caution(f)));
    say("  Times are UTC.");
    lines.add("");
    lines.addAll(PassLines.of(job));
    head("READINGS ON A FASTENER BESIDE ITS PASSES");
    rows(job.others().stream().map(a -> reading(a) + ", " + place(a) + ": " + reason(a)).toList());
    head("READINGS THAT COUNT FOR NO FASTENER");
    rows(
        job.unplaced().stream()
            .map(u -> reading(u.attempt()) + ": " + Phrases.unplaced(u))
            .toList());
    head("NONCONFORMITIES");
    job.deviations().forEach(this::deviation);
    none(job.deviations());
    head("CONFIRMED AND MEASURED BY PERSONS");
    job.gates().forEach(this::gate);
    none(job.gates());
    head("PLACED, SET ASIDE AND READ ANEW");
    rows(
        job.corrections().stream()
            .map(n -> Phrases.when(n) + "  " + Phrases.correction(n.entry()) + entry(n.n()))
            .toList());
    head("WRENCHES");
    job.wrenches()
        .forEach(
            w ->
                say(
                    "  "
                        + w.serial()
                        + "  "
                        + Phrases.wrench(w)
                        + "; "
                        + Phrases.calibration(w)
                        + entry(w.enrolled())));
    job.unknownWrenches().forEach(w -> say("  " + w + "  not enrolled"));
    head("PEOPLE");
    rows(job.people().stream().map(p -> p.badge() + "  " + Phrases.person(p)).toList());
    head("READINGS THAT CAME AFTER THE JOB'S END");
    rows(job.late().stream().map(RecordText::reading).toList());
    head("MISSING");
    rows(job.missing());
  }

  private void deviation(Deviation deviation) {
    Attempt a = deviation.attempt();
    say("  " + place(a) + ": " + reading(a));
    deviation
        .decisions()
        .forEach(
            d ->
                say(
                    "    "
                        + Phrases.time(d.disposed().at())
                        + "  "
                        + Phrases.decision(d)
                        + entry(d.entry())));
    if (deviation.decisions().isEmpty()) {
      say("    " + Phrases.undecided(deviation));
    }
  }

  private void gate(GateRecord gate) {
    say("  " + gate.step().id() + ", " + Phrases.gate(gate.step()));
    for (Numbered n : gate.done()) {
      boolean stands = gate.by().isPresent() && gate.by().getAsLong() == n.n();
      say(
          "    "
              + Phrases.when(n)
              + "  "
              + Phrases.done(gate.step(), n.entry())
              + (stands ? "" : ", does not stand")
              + entry(n.n()));
    }
    if (gate.by().isEmpty()) {
      say("    not done");
    }
  }

  private static String reading(Attempt a) {
    String angle = Phrases.angle(a);
    return Phrases.time(a.taken().moment())
        + "  "
        + Phrases.torque(a)
        + (angle.isEmpty() ? "" : ", " + angle + " degrees")
        + ", "
        + Phrases.outcome(a)
        + ", "
        + a.taken().event().wrench()
        + a.operator().map(o -> ", " + o).orElse("")
        + ", "
        + a.clock()
        + entry(a.entry());
  }

  private static String place(Attempt a) {
    return Remarks.fastener(a) + a.judged().pass().map(p -> ", " + p + " pass").orElse("");
  }

  private static String reason(Attempt a) {
    return a.judged().reason().code();
  }

  private static String entry(long n) {
    return " (entry " + n + ")";
  }

  private void head(String title) {
    lines.add("");
    lines.add(title);
  }

  private void rows(List<String> rows) {
    rows.forEach(r -> say("  " + r));
    none(rows);
  }

  private void none(List<?> rows) {
    if (rows.isEmpty()) {
      lines.add(NOTHING);
    }
  }

  private void say(String text) {
    say(text, "      ");
  }

  private void say(String text, String indent) {
    lines.addAll(Paragraph.of(Visible.of(text), WIDTH, indent));
  }

  /** How a pass stands where it does not stand by a reading. */
  static String state(PassRecord pass) {
    return switch (pass.state()) {
      case STANDS -> "";
      case CONCEDED -> "used as it is, entry " + pass.by().getAsLong();
      case NONCONFORMING -> "NONCONFORMING";
      case PENDING -> "NOT DONE";
    };
  }
}
