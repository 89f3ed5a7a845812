package witnessmark.benchmark;

import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Random;
import witnessmark.entry.Effect;
import witnessmark.entry.Entry;
import witnessmark.entry.Entry.TorqueTaken;
import witnessmark.job.Shop;
import witnessmark.ledger.Ledger.Appending;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.sqlite.SqliteLedger;
import witnessmark.pipeline.Arrival;
import witnessmark.pipeline.Journal;
import witnessmark.pipeline.OnRecord;
import witnessmark.pipeline.Outcome;
import witnessmark.pipeline.Step;

/**
 * Whether a decision takes longer where the log is long: the same job, open in a short log and in a
 * long one, in turn. Each round is one transaction that appends nothing and is taken back.
 */
final class LogSize {
  private static final int FASTENERS = 500;
  private static final int SHORT = 1_000;
  private static final int LONG = 200_000;

  /** Above every number in the logs, as a wrench that counts on. */
  private static final int NUMBERS = 1_000_000;

  private LogSize() {}

  static void run(Path directory, int rounds) {
    Print.title(
        "Decisions beside a log, without the commit; 500 fasteners, two passes, 4 wrenches");
    Path own = Directories.fresh(directory, "log-size");
    try (Log small = new Log(Data.withHistory(own.resolve("short"), SHORT, FASTENERS));
        Log large = new Log(Data.withHistory(own.resolve("long"), LONG, FASTENERS))) {
      Print.note("short log: " + small.size() + " entries; long log: " + large.size());
      small.round(new Series());
      large.round(new Series());
      Series shorts = new Series();
      Series longs = new Series();
      for (int i = 0; i < rounds; i++) {
        (i % 2 == 0 ? small : large).round(i % 2 == 0 ? shorts : longs);
        (i % 2 == 0 ? large : small).round(i % 2 == 0 ? longs : shorts);
      }
      print("fresh reading, decided", shorts.decided, longs.decided);
      print("any reading of the log, asked after", shorts.asked, longs.asked);
      print("newest scan", shorts.scan, longs.scan);
    }
  }

  private static void print(String what, Times shorts, Times longs) {
    Print.line(what + ", short log: p50", shorts.p50, "us");
    Print.line(what + ", short log: p99", shorts.p99, "us");
    Print.line(what + ", long log: p50", longs.p50, "us");
    Print.line(what + ", long log: p99", longs.p99, "us");
    Print.line(what + ", long / short, p50 (aim: 1)", Figures.ratio(longs.p50, shorts.p50), "");
  }

  private record Times(Figures p50, Figures p99) {
    Times() {
      this(new Figures(), new Figures());
    }

    void add(Figures nanos) {
      p50.add(nanos.median() / 1000);
      p99.add(nanos.at(0.99) / 1000);
    }
  }

  /**
   * @param decided what {@link Step#take} asks and decides, and the fold
   * @param asked the questions that only repeats and readings of ended jobs make it ask the file
   */
  private record Series(Times decided, Times asked, Times scan) {
    Series() {
      this(new Times(), new Times(), new Times());
    }
  }

  private static final class Log implements AutoCloseable {
    private final SqliteLedger ledger;
    private final Shop shop;
    private final Random random = new Random(1);

    Log(LedgerFiles files) {
      ledger = SqliteLedger.open(files);
      shop = new Journal(ledger).current();
    }

    long size() {
      return shop.size();
    }

    void round(Series series) {
      for (int part = 0; part < 3; part++) {
        try (Appending txn = ledger.begin()) {
          OnRecord record = new OnRecord(txn);
          switch (part) {
            case 0 -> series.decided.add(decided(record));
            case 1 -> series.asked.add(asked(record));
            default -> series.scan.add(scan(record));
          }
        }
      }
    }

    private Figures decided(OnRecord record) {
      Figures nanos = new Figures();
      for (int job = 0; job < 10; job++) {
        Shop now = shop;
        for (int i = 0; i < 2 * FASTENERS; i++) {
          Arrival arrival = Data.fresh(i, NUMBERS + i);
          long began = System.nanoTime();
          Outcome outcome = Step.take(now, arrival, record);
          Entry entry = outcome.entries().get(0);
          now = now.after(now.size(), entry);
          nanos.add(System.nanoTime() - began);
          check(((TorqueTaken) entry).judged().effect() == Effect.CREDITED, entry);
        }
      }
      return nanos;
    }

    private Figures asked(OnRecord record) {
      Figures nanos = new Figures();
      for (int i = 0; i < 1_000; i++) {
        long n = random.nextLong(size());
        long began = System.nanoTime();
        Entry entry = record.entry(n).orElseThrow();
        if (entry instanceof TorqueTaken t) {
          OptionalLong number = t.event().number();
          int same = record.same(t.event().wrench(), number, t.fingerprint()).size();
          int alike = record.numbered(t.event().wrench(), number.getAsLong()).size();
          Optional<String> job = record.endedJob(t.station(), t.at());
          nanos.add(System.nanoTime() - began);
          check(same == 1 && alike == 1 && job.equals(t.job()), entry);
        }
      }
      return nanos;
    }

    private Figures scan(OnRecord record) {
      Figures nanos = new Figures();
      for (int i = 0; i < 200; i++) {
        long began = System.nanoTime();
        boolean recent = record.scan(Work.STATION).isPresent();
        nanos.add(System.nanoTime() - began);
        check(!recent, "the last badge is more than a thousand entries back");
      }
      return nanos;
    }

    private static void check(boolean holds, Object what) {
      if (!holds) {
        throw new IllegalStateException("not what is to be measured: " + what);
      }
    }

    @Override
    public void close() {
      ledger.close();
    }
  }
}
