package witnessmark.publish;

import java.util.Optional;
import java.util.function.LongFunction;
import java.util.function.Predicate;
import java.util.function.Supplier;
import witnessmark.entry.Entry;
import witnessmark.link.Post;

/** The messages that tell of entries: a verdict for each judgement, and what came of each scan. */
final class Announcements {
  private final String bridge;
  private final Predicate<String> stations;
  private final LongFunction<Entry> entries;

  /**
   * @param stations whether a station is told about
   * @param entries the entry of a number, which is on record
   */
  Announcements(String bridge, Predicate<String> stations, LongFunction<Entry> entries) {
    this.bridge = bridge;
    this.stations = stations;
    this.entries = entries;
  }

  /** What tells of that entry; empty where nobody is to be told. */
  Optional<Post> of(long n, Entry entry) {
    if (entry instanceof Entry.Scan s) {
      return post(s.station(), "scanned", () -> ScanEvent.of(bridge, n, s));
    }
    if (entry instanceof Entry.TorqueTaken t) {
      return verdict(t.station(), () -> VerdictEvent.of(bridge, n, t));
    }
    if (entry instanceof Entry.Assigned a) {
      Entry.TorqueTaken taken = (Entry.TorqueTaken) entries.apply(a.assigns());
      return verdict(taken.station(), () -> VerdictEvent.of(bridge, n, a, taken));
    }
    if (entry instanceof Entry.Reread r) {
      Entry.TorqueTaken taken = (Entry.TorqueTaken) entries.apply(r.rereads());
      return verdict(taken.station(), () -> VerdictEvent.of(bridge, n, r, taken));
    }
    return Optional.empty();
  }

  private Optional<Post> verdict(String station, Supplier<byte[]> event) {
    return post(station, "verdict", event);
  }

  private Optional<Post> post(String station, String what, Supplier<byte[]> event) {
    return stations.test(station)
        ? Optional.of(new Post(Retained.topic(station, what), event.get()))
        : Optional.empty();
  }
}
