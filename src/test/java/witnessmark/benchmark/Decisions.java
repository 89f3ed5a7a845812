package witnessmark.benchmark;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Predicate;
import witnessmark.desk.Command;
import witnessmark.desk.OpenJob;
import witnessmark.desk.Release;
import witnessmark.entry.Entry;
import witnessmark.entry.Reason;
import witnessmark.job.Shop;
import witnessmark.pipeline.Outcome;
import witnessmark.pipeline.Seen;
import witnessmark.pipeline.Step;
import witnessmark.procedure.ProcedureFile;

/**
 * How long the core takes to decide and to fold the entry in; no disk. A late reading has those
 * that came before it decided again: its time counts by the entry.
 */
final class Decisions {
  private static final int WARM_UP = 6;

  /** Rounds after which the least time of a decision is its own, and not the machine's. */
  private static final int ENOUGH = 20;

  private final Shop opened;
  private final List<List<Taken>> jobs;
  private final Predicate<Taken> counts;

  private Decisions(Shop opened, List<List<Taken>> jobs, Predicate<Taken> counts) {
    this.opened = opened;
    this.jobs = jobs;
    this.counts = counts;
  }

  static void run(int rounds) {
    Print.title("Decisions of the core: place, judge, fold; two passes, 4 wrenches, no disk");
    for (int fasteners : new int[] {30, 120, 500}) {
      Shop opened = opened(fasteners);
      List<List<Taken>> hitAgain = Shift.hitAgain(fasteners);
      new Decisions(opened, Shift.fresh(fasteners), t -> true)
          .measure(fasteners + " fasteners, fresh", rounds);
      new Decisions(opened, hitAgain, t -> t.reason() == Reason.HIT_AGAIN_BY_ANGLE)
          .measure(fasteners + " fasteners, second hit told by angle", rounds);
      new Decisions(opened, hitAgain, t -> t.reason() == Reason.NEXT_OR_AGAIN)
          .measure(fasteners + " fasteners, second hit asked about", rounds);
      List<List<Taken>> mixed = Shift.mixed(fasteners);
      new Decisions(opened, mixed, t -> true)
          .measure(fasteners + " fasteners, mixed as in a shop", rounds);
      new Decisions(opened, mixed, t -> t.arrival().stored())
          .measure(fasteners + " fasteners, late by three, each of 4 entries", rounds);
    }
  }

  private void measure(String what, int rounds) {
    Figures least = round();
    for (int i = 1; i < WARM_UP; i++) {
      round();
    }
    Figures p50 = new Figures();
    Figures p99 = new Figures();
    for (int i = 0; i < Math.max(rounds, ENOUGH); i++) {
      Figures nanos = round();
      least = Figures.lesser(least, nanos);
      if (i < rounds) {
        p50.add(nanos.median() / 1000);
        p99.add(nanos.at(0.99) / 1000);
      }
    }
    Figures core = new Figures();
    core.add(least.at(0.99) / 1000);
    Print.line(what + ": p50", p50, "us");
    Print.line(what + ": p99", p99, "us");
    Print.line(what + ": p99 of each one's least of " + Math.max(rounds, ENOUGH), core, "us");
  }

  /** Does each job from where it was opened. */
  private Figures round() {
    Figures nanos = new Figures();
    for (List<Taken> job : jobs) {
      Shop shop = opened;
      for (Taken taken : job) {
        long began = System.nanoTime();
        Outcome outcome = Step.take(shop, taken.arrival(), NOTHING);
        for (Entry entry : outcome.entries()) {
          shop = shop.after(shop.size(), entry);
        }
        long took = System.nanoTime() - began;
        taken.check(outcome);
        int entries = outcome.entries().size();
        for (int i = 0; i < entries && counts.test(taken); i++) {
          nanos.add((double) took / entries);
        }
      }
      int due = 2 * shop.active(Work.STATION).orElseThrow().plan().fasteners();
      if (shop.active(Work.STATION).orElseThrow().passesDone() != due) {
        throw new IllegalStateException("the job is not done");
      }
    }
    return nanos;
  }

  private static Shop opened(int fasteners) {
    Shop shop = Shop.EMPTY;
    for (int i = 0; i < Work.wrenches(); i++) {
      shop = after(shop, Work.enrolment(i, Taken.NOW));
    }
    String text = Work.procedure(fasteners);
    shop = after(shop, new Release(ProcedureFile.parse("benchmark", text), text, Optional.empty()));
    return after(
        shop,
        new OpenJob(
            Work.PROCEDURE, Optional.empty(), "ATR-26-0147", Work.STATION, Optional.empty()));
  }

  private static Shop after(Shop shop, Command command) {
    Shop now = shop;
    for (Entry entry : command.decide(shop, Taken.NOW)) {
      now = now.after(now.size(), entry);
    }
    return now;
  }

  private static final Seen NOTHING =
      new Seen() {
        @Override
        public List<Entry.TorqueTaken> same(
            String wrench, OptionalLong number, String fingerprint) {
          return List.of();
        }

        @Override
        public List<Entry.TorqueTaken> numbered(String wrench, long number) {
          return List.of();
        }

        @Override
        public Optional<Entry> entry(long n) {
          return Optional.empty();
        }

        @Override
        public Optional<Entry.Scan> scan(String station) {
          return Optional.empty();
        }

        @Override
        public Optional<String> endedJob(String station, Instant moment) {
          return Optional.empty();
        }
      };
}
