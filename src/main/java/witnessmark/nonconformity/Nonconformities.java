package witnessmark.nonconformity;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.job.Condition;
import witnessmark.job.Flaw;
import witnessmark.job.JobState;
import witnessmark.job.Shop;
import witnessmark.ledger.Reading;
import witnessmark.ledger.Reading.JobRow;
import witnessmark.ledger.Reading.Query;
import witnessmark.nonconformity.Nonconformity.Decision;
import witnessmark.nonconformity.Nonconformity.State;
import witnessmark.pipeline.Before;
import witnessmark.pipeline.Replay;

/** Reads the nonconformities from the log. */
public final class Nonconformities {
  private final Reading reading;
  private final Shop shop;
  private final Map<Long, List<Decision>> decisions = new TreeMap<>();
  private final List<Nonconformity> found = new ArrayList<>();

  private Nonconformities(Reading reading) {
    this.reading = reading;
    this.shop = Replay.of(reading.live());
  }

  /** All on record; the open ones first, and among those the most critical and the oldest. */
  public static List<Nonconformity> in(Reading reading) {
    return new Nonconformities(reading).all();
  }

  private List<Nonconformity> all() {
    Optional<String> any = Optional.empty();
    reading.find(
        new Query(any, any, any, any, any, any, any, Optional.of("disposed"), any, any, any),
        s -> {
          Entry.Disposed disposed = (Entry.Disposed) EntryJson.read(s.bytes());
          decisions
              .computeIfAbsent(disposed.nonconformity(), n -> new ArrayList<>())
              .add(new Decision(s.n(), disposed));
        });
    for (JobRow row : reading.jobs(any, any, false)) {
      if (shop.jobs().containsKey(row.job())) {
        undecided(row, shop.jobs().get(row.job()), State.OPEN);
      } else if (row.status().equals("abandoned")) {
        undecided(row, Before.job(reading, row.ended().orElseThrow(), row.job()), State.LEFT_OPEN);
      }
    }
    decisions.forEach(this::decided);
    found.sort(
        Comparator.comparing(Nonconformity::state)
            .thenComparing(Nonconformity::criticality)
            .thenComparing(Nonconformity::since)
            .thenComparing(Nonconformity::entry));
    return List.copyOf(found);
  }

  private void undecided(JobRow row, JobState job, State state) {
    for (int i = 0; i < job.plan().fasteners(); i++) {
      Optional<Flaw> flaw = job.condition(i).flaw();
      if (flaw.isPresent()) {
        found.add(
            new Nonconformity(
                flaw.get().entry(),
                moment(flaw.get().entry()),
                row.unit(),
                row.job(),
                job.plan().name(i),
                job.plan().stepOf(i).criticality(),
                flaw.get().verdict(),
                state,
                List.of()));
      }
    }
  }

  private void decided(long entry, List<Decision> made) {
    Entry.Disposed first = made.get(0).disposed();
    JobRow row = reading.jobs(Optional.empty(), Optional.of(first.job()), false).get(0);
    JobState before = Before.job(reading, made.get(0).n(), first.job());
    int fastener = before.plan().fastener(first.fastener()).orElseThrow();
    found.add(
        new Nonconformity(
            entry,
            moment(entry),
            row.unit(),
            row.job(),
            first.fastener(),
            before.plan().stepOf(fastener).criticality(),
            before.condition(fastener).flaw().flatMap(Flaw::verdict),
            toBeDone(first.job(), fastener) ? State.TO_BE_DONE : State.SETTLED,
            made));
  }

  private boolean toBeDone(String job, int fastener) {
    return Optional.ofNullable(shop.jobs().get(job))
        .map(j -> j.condition(fastener))
        .filter(Condition::rework)
        .isPresent();
  }

  private Instant moment(long entry) {
    Entry about = EntryJson.read(reading.entry(entry).orElseThrow().bytes());
    return about instanceof Entry.TorqueTaken t ? t.moment() : about.at();
  }
}
