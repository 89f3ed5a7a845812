package witnessmark.demo;

import java.io.PrintWriter;
import java.util.List;
import java.util.function.LongSupplier;
import witnessmark.entry.Effect;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.job.JobState;
import witnessmark.job.Shop;
import witnessmark.ledger.Reading;
import witnessmark.ledger.Stored;
import witnessmark.pipeline.Replay;
import witnessmark.procedure.AttestStep;
import witnessmark.report.BandText;
import witnessmark.report.Line;
import witnessmark.report.Paragraph;

/** Tells what goes on record as it happens, one line an entry. */
final class Story {
  private static final int WIDTH = 110;
  private static final String INDENT = " ".repeat(28);

  private final PrintWriter out;
  private final Reading reading;
  private final LongSupplier repeats;
  private Shop shop = Shop.EMPTY;
  private long told;

  /**
   * @param repeats how many repeats the bridge has counted, which leave no entry
   */
  Story(PrintWriter out, Reading reading, LongSupplier repeats) {
    this.out = out;
    this.reading = reading;
    this.repeats = repeats;
  }

  /** The shop as far as the story has come. */
  Shop shop() {
    return shop;
  }

  /** Tells what is new. */
  void tell() {
    List<Stored> news = reading.from(shop.size(), 1000);
    for (Stored stored : news) {
      Entry entry = EntryJson.read(stored.bytes());
      Shop before = shop;
      shop = Replay.after(shop, List.of(stored));
      Paragraph.of(line(stored.n(), entry, before), WIDTH, INDENT).forEach(out::println);
    }
    for (; told < repeats.getAsLong(); told++) {
      out.println("         the same message came twice: counted, nothing changed");
    }
    out.flush();
  }

  private String line(long n, Entry entry, Shop before) {
    String time = Line.of(n, entry).cell("at").substring(11, 19);
    return String.format("%4d  %s  %s", n, time, text(n, entry, before));
  }

  private String text(long n, Entry entry, Shop before) {
    if (entry instanceof Entry.TorqueTaken t && t.judged().effect() == Effect.CREDITED) {
      JobState job = shop.jobs().get(t.job().orElseThrow());
      return String.format(
          "%s  %-24s %-6s %10s %-9s in %-20s %d/%d",
          t.event().wrench(),
          t.judged().fastener().orElseThrow(),
          t.judged().pass().orElseThrow(),
          t.event().torque(),
          t.event().angle().map(a -> a + " deg").orElse(""),
          BandText.of(t.judged().low().orElseThrow(), t.judged().high().orElseThrow()),
          job.passesDone(),
          job.plan().passes());
    }
    if (entry instanceof Entry.TorqueTaken t) {
      return t.event().wrench() + "  ! " + t.judged().text();
    }
    if (entry instanceof Entry.Attested a) {
      return a.by() + " confirms " + a.step() + ": " + statement(before, a);
    }
    Line line = Line.of(n, entry);
    String who = line.cell("operator").isEmpty() ? line.cell("wrench") : line.cell("operator");
    String what = line.cell("fastener").isEmpty() ? "" : line.cell("fastener") + ": ";
    return (who + "  " + what + line.cell("text")).strip();
  }

  private static String statement(Shop before, Entry.Attested attested) {
    return before
        .jobs()
        .get(attested.job())
        .plan()
        .procedure()
        .step(attested.step())
        .map(s -> ((AttestStep) s).statement())
        .orElse("");
  }
}
