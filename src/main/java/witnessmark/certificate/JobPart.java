package witnessmark.certificate;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import witnessmark.record.Attempt;
import witnessmark.record.Deviation;
import witnessmark.record.GateRecord;
import witnessmark.record.JobRecord;
import witnessmark.record.Numbered;
import witnessmark.report.Phrases;
import witnessmark.report.Remarks;

/** What a certificate says of one job. */
final class JobPart {
  private final Sheet sheet;
  private final JobRecord job;

  private JobPart(Sheet sheet, JobRecord job) {
    this.sheet = sheet;
    this.job = job;
  }

  static void draw(Sheet sheet, JobRecord job) {
    JobPart part = new JobPart(sheet, job);
    part.heading();
    Section.lines(
        sheet,
        "Readings that came after the job's end",
        job.late().stream().map(JobPart::reading).toList());
    part.missing();
    part.deviations();
    PassTable.draw(sheet, job);
    part.gates();
    Section.lines(
        sheet,
        "Readings on a fastener beside its passes",
        job.others().stream()
            .map(a -> reading(a) + ": " + place(a) + ", " + a.judged().reason().code())
            .toList());
    Section.lines(
        sheet,
        "Readings that count for no fastener",
        job.unplaced().stream()
            .map(u -> reading(u.attempt()) + ": " + Phrases.unplaced(u))
            .toList());
    Section.lines(
        sheet,
        "Placed by hand, set aside, and read anew",
        job.corrections().stream()
            .map(n -> Phrases.when(n) + " · " + Phrases.correction(n.entry()) + entry(n.n()))
            .toList());
    Section.lines(sheet, "Wrenches and calibrations", wrenches(job));
    Section.lines(
        sheet,
        "People",
        job.people().stream().map(p -> p.badge() + ": " + Phrases.person(p)).toList());
  }

  private void heading() {
    boolean good =
        job.outcome() == JobRecord.Outcome.CLOSED
            && job.late().isEmpty()
            && job.foundLater().isEmpty();
    String ended =
        switch (job.outcome()) {
          case CLOSED ->
              "closed: every fastener, confirmation and measurement stands"
                  + (job.foundLater().isEmpty() ? "" : " as judged then; see the caution below");
          case ABANDONED -> "abandoned incomplete";
          case SUSPENDED -> "suspended: not ended";
          case OPEN -> "open: not ended";
        };
    Section.title(
        sheet,
        job.procedure().id()
            + " revision "
            + job.procedure().revision()
            + ", "
            + job.procedure().title(),
        60);
    Section.bold(sheet, good ? Ink.GOOD : Ink.BAD, "Job " + job.job() + " " + ended + ".");
    Section.line(sheet, Phrases.summary(job) + ".");
    Section.line(sheet, Phrases.wholeness(job));
    job.foundLater().forEach(f -> Section.bold(sheet, Ink.BAD, "Caution: " + Remarks.caution(f)));
    Remarks.nameless(job).ifPresent(n -> Section.line(sheet, n));
    for (Numbered n : job.life()) {
      Section.line(sheet, Phrases.when(n) + " · " + Phrases.life(n.entry()) + entry(n.n()));
    }
  }

  private void missing() {
    Section.title(sheet, "Missing", 14);
    if (job.missing().isEmpty()) {
      Section.line(sheet, "Nothing.");
    }
    job.missing().forEach(m -> Section.bold(sheet, Ink.BAD, m));
  }

  private void deviations() {
    Section.title(sheet, "Nonconformities and what was decided", 14);
    if (job.deviations().isEmpty()) {
      Section.line(sheet, "None.");
    }
    for (Deviation d : job.deviations()) {
      Section.bold(sheet, Ink.TEXT, place(d.attempt()));
      Section.indented(sheet, reading(d.attempt()));
      for (Deviation.Decision x : d.decisions()) {
        Section.indented(
            sheet,
            Phrases.time(x.disposed().at()) + " · " + Phrases.decision(x) + entry(x.entry()));
      }
      if (d.decisions().isEmpty()) {
        Section.indented(sheet, Phrases.undecided(d) + ".");
      }
    }
  }

  private void gates() {
    if (job.gates().isEmpty()) {
      return;
    }
    Section.title(sheet, "Confirmed and measured by people", 26);
    for (GateRecord gate : job.gates()) {
      Section.bold(
          sheet,
          gate.by().isPresent() ? Ink.TEXT : Ink.BAD,
          gate.step().title() + (gate.by().isPresent() ? "" : ": NOT DONE"));
      Section.indented(sheet, Phrases.gate(gate.step()));
      for (Numbered n : gate.done()) {
        boolean stands = gate.by().isPresent() && gate.by().getAsLong() == n.n();
        Section.indented(
            sheet,
            Phrases.when(n)
                + " · "
                + Phrases.done(gate.step(), n.entry())
                + (stands ? "" : ", does not stand")
                + entry(n.n()));
      }
    }
  }

  private static List<String> wrenches(JobRecord job) {
    return Stream.concat(
            job.wrenches().stream()
                .map(
                    w ->
                        w.serial()
                            + ": "
                            + Phrases.wrench(w)
                            + "; "
                            + Phrases.calibration(w)
                            + entry(w.enrolled())),
            job.unknownWrenches().stream().map(w -> w + ": not enrolled"))
        .collect(Collectors.toList());
  }

  private static String reading(Attempt a) {
    String angle = Phrases.angle(a);
    return Phrases.time(a.taken().moment())
        + " · "
        + Phrases.torque(a)
        + (angle.isEmpty() ? "" : ", " + angle + " degrees")
        + ", "
        + Phrases.outcome(a)
        + ", "
        + a.taken().event().wrench()
        + a.operator().map(o -> ", " + o).orElse("")
        + ", time by "
        + a.clock()
        + entry(a.entry());
  }

  private static String place(Attempt a) {
    return Remarks.fastener(a) + a.judged().pass().map(p -> ", " + p + " pass").orElse("");
  }

  private static String entry(long n) {
    return " (entry " + n + ")";
  }
}
