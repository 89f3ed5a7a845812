package witnessmark.pipeline;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.entry.Judged;
import witnessmark.entry.Reason;
import witnessmark.job.JobState;
import witnessmark.job.Shop;
import witnessmark.judge.Judge;
import witnessmark.ledger.Reading;
import witnessmark.ledger.Reading.Query;
import witnessmark.ledger.Stored;
import witnessmark.match.Place;
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
      List.of("operator-enrolled", "wrench-enrolled", "procedure-released");

  /** What the event of entry {@code n} met; empty where it met no job, or is no torque event. */
  public static Optional<Before> of(Reading reading, long n, Entry entry) {
    if (entry instanceof Entry.TorqueTaken t && t.job().isPresent()) {
      Shop shop = shop(reading, n, t.job().get());
      JobState job = shop.jobs().get(t.job().get());
      boolean perhaps = t.judged().reason() == Reason.PERHAPS_REPEATED;
      Judged today = Step.judge(shop, Optional.of(job), t.event(), t.moment(), perhaps);
      return Optional.of(new Before(job, t.event(), today));
    }
    if (entry instanceof Entry.Assigned a) {
      Shop shop = shop(reading, n, a.job());
      JobState job = shop.jobs().get(a.job());
      return reading
          .entry(a.assigns())
          .map(s -> (Entry.TorqueTaken) EntryJson.read(s.bytes()))
          .map(t -> new Before(job, t.event(), assigned(shop, job, t, a)));
    }
    return Optional.empty();
  }

  private static Judged assigned(
      Shop shop, JobState job, Entry.TorqueTaken taken, Entry.Assigned assigned) {
    String fastener = assigned.judged().fastener().orElse("");
    return Judge.of(
        job,
        Place.named(job, taken.event(), fastener, Reason.ASSIGNED_BY_PERSON),
        taken.event(),
        Optional.ofNullable(shop.wrenches().get(taken.event().wrench())),
        taken.moment());
  }

  /** The registers and the job, before entry {@code n}. */
  private static Shop shop(Reading reading, long n, String job) {
    TreeMap<Long, Stored> entries = new TreeMap<>();
    for (String kind : REGISTERS) {
      reading.find(query(Optional.empty(), Optional.of(kind)), s -> entries.put(s.n(), s));
    }
    reading.find(query(Optional.of(job), Optional.empty()), s -> entries.put(s.n(), s));
    return Replay.after(Shop.EMPTY, new ArrayList<>(entries.headMap(n).values()));
  }

  private static Query query(Optional<String> job, Optional<String> kind) {
    Optional<String> any = Optional.empty();
    return new Query(any, job, any, any, any, any, any, kind, any, any, any);
  }
}
