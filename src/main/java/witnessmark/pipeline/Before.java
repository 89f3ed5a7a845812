package witnessmark.pipeline;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.entry.Judged;
import witnessmark.entry.Reason;
import witnessmark.job.History;
import witnessmark.job.JobState;
import witnessmark.job.Shop;
import witnessmark.judge.Decide;
import witnessmark.ledger.Reading;
import witnessmark.ledger.Reading.Query;
import witnessmark.ledger.Stored;
import witnessmark.torque.TorqueEvent;

/**
 * What a torque event met: the job as its entries had left it, and how the rules of this version
 * decide on it.
 *
 * @param job before the event
 * @param event as it was sent
 * @param today this version's decision, which the entry's need not be: an older version made that
 */
public record Before(JobState job, TorqueEvent event, Judged today) {
  private static final List<String> REGISTERS =
      List.of(
          "operator-enrolled",
          "operator-key-enrolled",
          "operator-key-withdrawn",
          "wrench-enrolled",
          "wrench-bound",
          "calibration-ruled",
          "wrench-calibrated",
          "calibration-ended",
          "procedure-released");

  /** What the event of entry {@code n} met; empty where it met no job, or is no torque event. */
  public static Optional<Before> of(Reading reading, long n, Entry entry) {
    if (entry instanceof Entry.TorqueTaken t
        && t.job().isPresent()
        && t.judged().reason() != Reason.LATE_FOR_ENDED_JOB) {
      Shop shop = shop(reading, n, t.job().get());
      JobState met = Joining.met(shop.jobs().get(t.job().get()), t);
      boolean perhaps = t.judged().reason() == Reason.PERHAPS_REPEATED;
      Judged today = Joining.decided(shop, met, t, t.scanned(), perhaps);
      return Optional.of(new Before(met, t.event(), today));
    }
    if (entry instanceof Entry.Assigned a) {
      Shop shop = shop(reading, n, a.job());
      return taken(reading, a.assigns()).map(t -> assigned(shop, t, a));
    }
    if (entry instanceof Entry.Reread r) {
      Shop shop = shop(reading, n, r.job());
      return taken(reading, r.rereads()).map(t -> reread(shop, t, r));
    }
    return Optional.empty();
  }

  /** A job as the entries before {@code n} had left it. */
  public static JobState job(Reading reading, long n, String job) {
    return shop(reading, n, job).jobs().get(job);
  }

  private static Optional<Entry.TorqueTaken> taken(Reading reading, long n) {
    return reading.entry(n).map(s -> (Entry.TorqueTaken) EntryJson.read(s.bytes()));
  }

  private static Before assigned(Shop shop, Entry.TorqueTaken taken, Entry.Assigned assigned) {
    JobState job = shop.jobs().get(assigned.job());
    JobState then = History.met(job, assigned.assigns(), taken.place());
    String fastener = assigned.judged().fastener().orElse("");
    return new Before(then, taken.event(), Decide.assigned(shop, then, taken, fastener));
  }

  private static Before reread(Shop shop, Entry.TorqueTaken taken, Entry.Reread reread) {
    JobState job = shop.jobs().get(reread.job());
    JobState then = History.before(job, reread.rereads()).orElseThrow();
    return new Before(then, taken.event(), Decide.of(shop, then, taken, taken.scanned()));
  }

  /** The registers and the job, before entry {@code n}. */
  private static Shop shop(Reading reading, long n, String job) {
    TreeMap<Long, Stored> entries = new TreeMap<>();
    reading.registers(REGISTERS, n).forEach(s -> entries.put(s.n(), s));
    reading.find(of(job), s -> entries.put(s.n(), s));
    return Replay.after(Shop.EMPTY, new ArrayList<>(entries.headMap(n).values()));
  }

  private static Query of(String job) {
    Optional<String> any = Optional.empty();
    return new Query(any, Optional.of(job), any, any, any, any, any, any, any, any, any);
  }
}
