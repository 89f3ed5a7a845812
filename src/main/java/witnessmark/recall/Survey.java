package witnessmark.recall;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.SortedMap;
import java.util.TreeMap;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.entry.Moments;
import witnessmark.ledger.Reading;
import witnessmark.ledger.Reading.Query;

/** Reads from the log what a recall of one wrench is computed from. */
public final class Survey {
  private static final Optional<String> ANY = Optional.empty();

  private final Reading reading;
  private final String wrench;

  public Survey(Reading reading, String wrench) {
    this.reading = reading;
    this.wrench = wrench;
  }

  /** How the wrench was found last, or by an entry. */
  public Optional<Finding> finding(OptionalLong entry) {
    SortedMap<Long, Entry> about = new TreeMap<>();
    for (String kind : List.of("wrench-enrolled", "wrench-calibrated", "wrench-checked")) {
      reading.find(
          query(Optional.of(wrench), Optional.of(kind), ANY),
          s -> about.put(s.n(), EntryJson.read(s.bytes())));
    }
    return Finding.of(about, entry);
  }

  /**
   * The recall by a finding. Reads everything taken since the good calibration, once and in order:
   * what a joint stands by may be another wrench's.
   */
  public Recall recall(Finding finding) {
    Touched touched = new Touched(reading, wrench, finding);
    reading.chunks(
        query(ANY, ANY, Optional.of(Moments.text(finding.from()))),
        chunk ->
            chunk.parallelStream()
                .map(s -> new Touched.Noted(s.n(), EntryJson.read(s.bytes())))
                .forEachOrdered(touched::take));
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
