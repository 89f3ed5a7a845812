package witnessmark.pipeline;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import witnessmark.entry.Entry;
import witnessmark.entry.Judged;
import witnessmark.entry.Moments;
import witnessmark.entry.Objection;
import witnessmark.entry.Reason;
import witnessmark.job.History;
import witnessmark.job.JobState;
import witnessmark.job.Shop;
import witnessmark.judge.Decide;
import witnessmark.judge.Rereading;

/** Puts a torque event into the job that was open when it happened. */
final class Joining {
  private static final String NO_NUMBER =
      " The wrench sent no event number, so a repeat could not be told for sure.";

  private Joining() {}

  /**
   * The event's entry, and one for each later event that is decided otherwise because of it.
   *
   * @param taken the entry with everything but its job and decision
   * @param perhaps whether the event may be on record already
   */
  static List<Entry> of(Shop shop, Entry.TorqueTaken taken, boolean perhaps, Seen seen) {
    boolean late = taken.timing().tardy();
    Optional<JobState> job =
        late ? shop.active(taken.station(), taken.moment()) : shop.active(taken.station());
    if (job.isEmpty()) {
      Optional<String> ended =
          late ? seen.endedJob(taken.station(), taken.moment()) : Optional.empty();
      Reason reason =
          perhaps
              ? Reason.PERHAPS_REPEATED
              : ended.isPresent() ? Reason.LATE_FOR_ENDED_JOB : Reason.NO_ACTIVE_JOB;
      return List.of(
          with(
              taken,
              Optional.empty(),
              reason == Reason.LATE_FOR_ENDED_JOB ? ended : Optional.empty(),
              unplaced(shop, reason, taken)));
    }
    Optional<String> scanned = late ? Optional.empty() : job.get().named();
    Optional<String> name = job.map(JobState::job);
    Judged judged = decided(shop, met(job.get(), taken), taken, scanned, perhaps);
    Entry.TorqueTaken entry = with(taken, scanned, name, judged);
    if (!late) {
      return List.of(entry);
    }
    long n = shop.size();
    List<Entry> entries = new ArrayList<>(List.of(entry));
    JobState changed = shop.after(n, entry).jobs().get(name.get());
    entries.addAll(Rereading.of(shop, changed, n, n, taken.at()));
    return entries;
  }

  /** The job as the event met it. */
  static JobState met(JobState job, Entry.TorqueTaken taken) {
    return taken.timing().tardy() ? History.at(job, taken.moment()) : job;
  }

  /** The decision on the event in the job as it met it. */
  static Judged decided(
      Shop shop, JobState met, Entry.TorqueTaken taken, Optional<String> scanned, boolean perhaps) {
    return perhaps
        ? unplaced(shop, Reason.PERHAPS_REPEATED, taken)
        : Decide.of(shop, met, taken, scanned);
  }

  /** Without a place in a job, only where it came from can be objected to. */
  private static Judged unplaced(Shop shop, Reason reason, Entry.TorqueTaken taken) {
    List<Objection> objections =
        shop.fromItsSource(taken) ? List.of() : List.of(Objection.NOT_FROM_ITS_SOURCE);
    return Step.unplaced(reason, objections, taken.event());
  }

  private static Entry.TorqueTaken with(
      Entry.TorqueTaken e, Optional<String> scanned, Optional<String> job, Judged judged) {
    return new Entry.TorqueTaken(
        e.at(),
        e.station(),
        e.source(),
        e.event(),
        e.raw(),
        e.fingerprint(),
        e.timing(),
        scanned,
        e.operator(),
        job,
        judged.withText(judged.text() + notes(e)));
  }

  private static String notes(Entry.TorqueTaken e) {
    StringBuilder notes = new StringBuilder();
    if (e.event().number().isEmpty()) {
      notes.append(NO_NUMBER);
    }
    if (e.timing().tardy()) {
      notes
          .append(" It came ")
          .append(ago(Duration.between(e.moment(), e.at())))
          .append(" late and stands where it happened, at ")
          .append(Moments.text(e.moment()))
          .append(".");
    }
    e.timing()
        .counter()
        .ifPresent(
            c ->
                notes.append(
                    c.equals("used-before")
                        ? " Its event number was used before by another reading."
                        : " The wrench counts from low numbers again."));
    return notes.toString();
  }

  private static String ago(Duration lag) {
    return lag.toMinutes() >= 2 ? lag.toMinutes() + " min" : Math.max(0, lag.toSeconds()) + " s";
  }
}
