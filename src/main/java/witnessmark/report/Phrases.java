package witnessmark.report;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import witnessmark.entry.Entry;
import witnessmark.entry.Judged;
import witnessmark.entry.Objection;
import witnessmark.procedure.AttestStep;
import witnessmark.procedure.MeasureStep;
import witnessmark.procedure.Pass;
import witnessmark.procedure.Step;
import witnessmark.procedure.TightenStep;
import witnessmark.record.Attempt;
import witnessmark.record.Deviation;
import witnessmark.record.JobRecord;
import witnessmark.record.Numbered;
import witnessmark.record.Person;
import witnessmark.record.Signature;
import witnessmark.record.Unplaced;
import witnessmark.torque.Angle;
import witnessmark.wrench.Wrench;

/** What stands in a unit's record, in words for people. Times are UTC. */
public final class Phrases {
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss").withZone(ZoneOffset.UTC);
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("uuuu-MM-dd").withZone(ZoneOffset.UTC);

  private Phrases() {}

  /** To the second. */
  public static String time(Instant moment) {
    return TIME.format(moment);
  }

  public static String day(Instant moment) {
    return DAY.format(moment);
  }

  /** {@code 29.7 to 36.3 N.m, 20 to 60 degrees}. */
  public static String asked(Pass pass) {
    return pass.band()
        + pass.angle().map(a -> ", " + a.low() + " to " + a.high() + " degrees").orElse("");
  }

  /** What else binds the judging of a step; empty where nothing does. */
  public static String terms(TightenStep step) {
    return Stream.concat(
            Stream.of("criticality " + step.criticality().code()),
            Stream.concat(
                step.care().tool().acceptance().guard().stream()
                    .map(r -> "guarded with r = " + r.toPlainString()),
                step.care().tool().adapter().stream()
                    .map(
                        a ->
                            "through an adapter: lever "
                                + a.lever()
                                + ", offset "
                                + a.offset()
                                + ", "
                                + a.angle()
                                + " degrees")))
        .collect(Collectors.joining("; "));
  }

  /** The reading digit for digit, and behind an adapter the torque at the fastener. */
  public static String torque(Attempt attempt) {
    return attempt.taken().event().torque()
        + attempt.judged().atFastener().map(t -> " (" + t + " at the fastener)").orElse("");
  }

  /** The degrees sent: {@code 32.5 of 52.5} where they end a turn that earlier pulls began. */
  public static String angle(Attempt attempt) {
    String sent = attempt.taken().event().angle().map(Angle::toString).orElse("");
    return sent
        + attempt
            .judged()
            .angleTotal()
            .map(Angle::toString)
            .filter(all -> !all.equals(sent))
            .map(all -> " of " + all)
            .orElse("");
  }

  /** The verdict, or what a reading without one did, with what speaks against relying on it. */
  public static String outcome(Attempt attempt) {
    return attempt.outcome()
        + (attempt.judged().objections().isEmpty()
            ? ""
            : attempt.judged().objections().stream()
                .map(Objection::code)
                .collect(Collectors.joining(", ", " [", "]")));
  }

  /** What happened to the job, without when. */
  public static String life(Entry entry) {
    if (entry instanceof Entry.JobOpened e) {
      return "opened at " + e.station() + by(e.by());
    } else if (entry instanceof Entry.JobSuspended e) {
      return "suspended" + by(e.by()) + e.because().map(b -> ": " + b).orElse("");
    } else if (entry instanceof Entry.JobResumed e) {
      return "resumed at " + e.station() + by(e.by());
    } else if (entry instanceof Entry.JobClosed e) {
      return "closed" + by(e.by());
    } else if (entry instanceof Entry.JobAbandoned e) {
      return "abandoned incomplete" + by(e.by()) + ": " + e.because();
    }
    throw new IllegalStateException("no words for " + entry.getClass());
  }

  private static String by(java.util.Optional<String> badge) {
    return badge.map(b -> " by " + b).orElse("");
  }

  /**
   * {@code use-as-is by badge-11 as quality under concession K-7: washer face unmarked (not
   * signed)}.
   */
  public static String decision(Deviation.Decision decision) {
    Entry.Disposed d = decision.disposed();
    return d.disposition().code()
        + " by "
        + d.by()
        + d.role().map(r -> " as " + r.code()).orElse("")
        + d.concession().map(c -> " under concession " + c).orElse("")
        + ": "
        + d.because()
        + " ("
        + signature(decision.signature())
        + ")";
  }

  private static String signature(Signature signature) {
    String key =
        signature.key().isPresent() ? "the key of entry " + signature.key().getAsLong() : "";
    return switch (signature.kind()) {
      case NONE -> "not signed";
      case FITS -> "signed with " + key;
      case MISFIT -> "SIGNATURE DOES NOT FIT " + key;
      case LACKING ->
          "NOT SIGNED, though "
              + (key.isEmpty() ? "quality decided with keys" : key + " was in force");
      case UNSHOWN -> "signed with " + key + ", which is not at hand";
    };
  }

  /** What became of a nonconformity about which no decision names it. */
  public static String undecided(Deviation deviation) {
    return deviation.open()
        ? "nobody has decided on it"
        : "taken up with a later nonconformity of the same fastener";
  }

  /** What a person had to do. */
  public static String gate(Step step) {
    if (step instanceof AttestStep a) {
      return a.statement();
    } else if (step instanceof MeasureStep m) {
      return String.join(", ", m.labels())
          + ": "
          + m.low()
          + " to "
          + m.high()
          + " "
          + m.unit()
          + m.spread().map(s -> ", differing by at most " + s).orElse("");
    }
    throw new IllegalStateException("no words for " + step.getClass());
  }

  /** What a person did. */
  public static String done(Step step, Entry entry) {
    if (entry instanceof Entry.Attested e) {
      return "confirmed by " + e.by();
    } else if (entry instanceof Entry.Measured e && step instanceof MeasureStep m) {
      String numbers =
          IntStream.range(0, e.values().size())
              .mapToObj(i -> m.labels().get(i) + " " + e.values().get(i))
              .collect(Collectors.joining(", "));
      return numbers
          + " "
          + m.unit()
          + (e.within() ? "" : ", outside the limits")
          + ", measured by "
          + e.by();
    }
    throw new IllegalStateException("no words for " + entry.getClass());
  }

  /** A placing by hand, a setting aside or a new reading. */
  public static String correction(Entry entry) {
    if (entry instanceof Entry.Assigned e) {
      return "entry "
          + e.assigns()
          + " placed on "
          + place(e.judged())
          + " by "
          + e.by()
          + ": "
          + e.because();
    } else if (entry instanceof Entry.SetAside e) {
      return "entry " + e.sets() + " set aside by " + e.by() + ": " + e.because();
    } else if (entry instanceof Entry.Reread e) {
      return "entry "
          + e.rereads()
          + " read anew because of entry "
          + e.because()
          + ": "
          + place(e.judged())
          + ", "
          + e.judged().effect().code();
    }
    throw new IllegalStateException("no words for " + entry.getClass());
  }

  private static String place(Judged judged) {
    return judged
        .fastener()
        .map(f -> f + judged.pass().map(p -> ", " + p + " pass").orElse(""))
        .orElse("no fastener");
  }

  /** Why a reading counts for no fastener, and what was done about it. */
  public static String unplaced(Unplaced unplaced) {
    String why = unplaced.attempt().judged().reason().code();
    if (unplaced.setAside().isPresent()) {
      return why + "; " + correction(unplaced.setAside().get().entry());
    }
    return unplaced.asks() ? why + "; nobody has said which it was" : why;
  }

  /** The calibration of a wrench. */
  public static String calibration(Wrench wrench) {
    return wrench.certificate().map(c -> "certificate " + c).orElse("no certificate number")
        + ", calibrated "
        + day(wrench.calibrated())
        + ", due "
        + day(wrench.due())
        + wrench
            .uncertainty()
            .map(u -> ", uncertainty " + u + " % (k = 2)")
            .orElse(", uncertainty not on record");
  }

  /** The range and kind of a wrench. */
  public static String wrench(Wrench wrench) {
    return wrench.kind().code()
        + ", "
        + wrench.low()
        + " to "
        + wrench.high()
        + wrench.resolution().map(r -> ", resolution " + r).orElse("");
  }

  /** The name and roles of a person. */
  public static String person(Person person) {
    return person
        .enrolled()
        .map(
            o ->
                o.name()
                    + " ("
                    + o.roles().stream().map(r -> r.code()).collect(Collectors.joining(", "))
                    + ")")
        .orElse("not enrolled");
  }

  /**
   * {@code 71 of 72 fastener passes stand; 3 of 3 steps of persons; 1 nonconformity, none open}.
   */
  public static String summary(JobRecord job) {
    long gates = job.gates().stream().filter(g -> g.by().isPresent()).count();
    long open = job.deviations().stream().filter(Deviation::open).count();
    int all = job.deviations().size();
    return job.standing()
        + " of "
        + job.passes().size()
        + " fastener passes stand; "
        + gates
        + " of "
        + job.gates().size()
        + " confirmations and measurements; "
        + (all == 0
            ? "no nonconformity"
            : all
                + (all == 1 ? " nonconformity, " : " nonconformities, ")
                + (open == 0 ? "none open" : open + " open"));
  }

  /** What is known of how complete the job's entries are. */
  public static String wholeness(JobRecord job) {
    if (job.whole().isEmpty()) {
      return job.outcome().ended()
          ? "The job's end does not say how many entries it has: that none was left out is not shown."
          : "The job has not ended: there may be more entries of it.";
    }
    return job.whole().get()
        ? "All " + job.count() + " entries of the job up to its end are here, scans aside."
        : "ENTRIES ARE MISSING: the job's end counts "
            + job.told().getAsLong()
            + ", and "
            + job.count()
            + " are here.";
  }

  /** The number and moment of what a person did. */
  public static String when(Numbered numbered) {
    return time(numbered.entry().at());
  }
}
