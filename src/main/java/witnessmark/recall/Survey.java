package witnessmark.recall;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.CompletableFuture;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.entry.Moments;
import witnessmark.ledger.Reading;
import witnessmark.ledger.Reading.Query;
import witnessmark.ledger.Stored;
import witnessmark.recall.Touched.Noted;

/** Reads from the log what a recall of one wrench is computed from. */
public final class Survey {
  private static final Optional<String> ANY = Optional.empty();
  private static final List<String> REGISTERS = List.of("wrench-enrolled", "wrench-calibrated");

  /** How many chunks are read from the file while others are still being made sense of. */
  private static final int AHEAD = 8;

  private final Reading reading;
  private final String wrench;

  public Survey(Reading reading, String wrench) {
    this.reading = reading;
    this.wrench = wrench;
  }

  /** How the wrench was found last, or by an entry. */
  public Optional<Finding> finding(OptionalLong entry) {
    SortedMap<Long, Entry> about = new TreeMap<>();
    // By the register, for a wrench takes very many readings and is seldom calibrated.
    for (Stored stored : reading.registers(REGISTERS, Long.MAX_VALUE)) {
      Entry registered = EntryJson.read(stored.bytes());
      if (isAbout(registered)) {
        about.put(stored.n(), registered);
      }
    }
    reading.find(
        query(Optional.of(wrench), Optional.of("wrench-checked"), ANY),
        s -> about.put(s.n(), EntryJson.read(s.bytes())));
    return Finding.of(about, entry);
  }

  private boolean isAbout(Entry entry) {
    return (entry instanceof Entry.WrenchEnrolled e && e.wrench().equals(wrench))
        || (entry instanceof Entry.WrenchCalibrated c && c.wrench().equals(wrench));
  }

  /**
   * The recall by a finding. Reads everything taken since the good calibration, once and in order:
   * what a joint stands by may be another wrench's.
   */
  public Recall recall(Finding finding) {
    Touched touched = new Touched(reading, wrench, finding);
    Deque<CompletableFuture<List<Noted>>> ahead = new ArrayDeque<>();
    reading.chunks(
        query(ANY, ANY, Optional.of(Moments.text(finding.from()))),
        chunk -> {
          ahead.add(CompletableFuture.supplyAsync(() -> chunk.stream().map(Noted::of).toList()));
          if (ahead.size() > AHEAD) {
            ahead.remove().join().forEach(touched::take);
          }
        });
    ahead.forEach(a -> a.join().forEach(touched::take));
    List<Touch> touches = touched.touches();
    Span span = finding.span(Math.max(1, touched.readings()));
    List<Rejudged> joints =
        touches.parallelStream().map(t -> Rejudged.of(t, span)).sorted(Rejudged.FIRST).toList();
    return new Recall(wrench, finding, touched.readings(), joints);
  }

  private static Query query(
      Optional<String> wrench, Optional<String> kind, Optional<String> from) {
    return new Query(ANY, ANY, ANY, ANY, wrench, ANY, ANY, kind, ANY, from, ANY);
  }
}
