package witnessmark.benchmark;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import witnessmark.decode.Torqued;
import witnessmark.desk.Command;
import witnessmark.desk.OpenJob;
import witnessmark.desk.Release;
import witnessmark.entry.Effect;
import witnessmark.entry.Entry;
import witnessmark.job.Shop;
import witnessmark.pipeline.Arrival;
import witnessmark.pipeline.Outcome;
import witnessmark.pipeline.Seen;
import witnessmark.pipeline.Step;
import witnessmark.procedure.ProcedureFile;
import witnessmark.torque.Angle;
import witnessmark.torque.Direction;
import witnessmark.torque.Torque;
import witnessmark.torque.TorqueEvent;

/** How long the core takes to decide about a reading and to fold the entry in; no disk. */
final class Decisions {
  private static final Instant NOW = Instant.parse("2026-11-25T10:00:00Z");
  private static final int PER_ROUND = 20_000;

  private final Shop opened;
  private final List<Arrival> arrivals = new ArrayList<>();

  private Decisions(int fasteners) {
    Shop shop = Shop.EMPTY;
    for (int i = 0; i < Work.wrenches(); i++) {
      shop = after(shop, Work.enrolment(i, NOW));
    }
    String text = Work.procedure(fasteners);
    shop = after(shop, new Release(ProcedureFile.parse("benchmark", text), text, Optional.empty()));
    opened =
        after(
            shop,
            new OpenJob(
                Work.PROCEDURE, Optional.empty(), "ATR-26-0147", Work.STATION, Optional.empty()));
    for (int i = 0; i < 2 * fasteners; i++) {
      arrivals.add(arrival(i));
    }
  }

  static void run(int rounds) {
    Print.title(
        "Decisions of the core: place, judge, fold; job of two passes, 4 wrenches, no disk");
    for (int fasteners : new int[] {30, 120, 500}) {
      Decisions decisions = new Decisions(fasteners);
      decisions.round();
      decisions.round();
      Figures perSecond = new Figures();
      Figures p50 = new Figures();
      Figures p99 = new Figures();
      for (int i = 0; i < rounds; i++) {
        Figures nanos = decisions.round();
        perSecond.add(1e9 / nanos.mean());
        p50.add(nanos.median() / 1000);
        p99.add(nanos.at(0.99) / 1000);
      }
      Print.line(fasteners + " fasteners: rate", perSecond, "/s");
      Print.line(fasteners + " fasteners: p50", p50, "us");
      Print.line(fasteners + " fasteners: p99", p99, "us");
    }
  }

  private static final Seen NOTHING =
      new Seen() {
        @Override
        public boolean before(String wrench, OptionalLong number, String fingerprint) {
          return false;
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

  /** Does the job in order, again and again from where it was opened. */
  private Figures round() {
    Figures nanos = new Figures();
    for (int done = 0; done < PER_ROUND; done += arrivals.size()) {
      Shop shop = opened;
      for (Arrival arrival : arrivals) {
        long began = System.nanoTime();
        Outcome outcome = Step.take(shop, arrival, NOTHING);
        Entry entry = outcome.entries().get(0);
        shop = shop.after(shop.size(), entry);
        nanos.add(System.nanoTime() - began);
        if (((Entry.TorqueTaken) entry).judged().effect() != Effect.CREDITED) {
          throw new IllegalStateException("every reading is to be credited, not: " + entry);
        }
      }
    }
    return nanos;
  }

  private static Shop after(Shop shop, Command command) {
    Shop now = shop;
    for (Entry entry : command.decide(shop, NOW)) {
      now = now.after(now.size(), entry);
    }
    return now;
  }

  private static Arrival arrival(int i) {
    TorqueEvent event =
        new TorqueEvent(
            Work.wrench(i),
            OptionalLong.of(i),
            Optional.of(NOW),
            Torque.parse(Work.torque(i) + " N.m"),
            Optional.of(Angle.of("41.2")),
            Direction.CW,
            Optional.empty(),
            Optional.empty());
    String raw = new String(Work.reading(i, event.wrench(), Work.torque(i), ""));
    return new Arrival(
        Optional.of(Work.STATION), "benchmark", NOW, false, false, new Torqued(event, raw));
  }
}
