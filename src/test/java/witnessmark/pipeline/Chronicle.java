package witnessmark.pipeline;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import witnessmark.entry.Entry;
import witnessmark.entry.Judged;

/** A log's facts in the order in which they happened, read without the program's own history. */
final class Chronicle {
  /**
   * One fact.
   *
   * @param n its entry
   * @param judged the newest decision about a torque event
   * @param known the entry that made that decision
   * @param settled whether a person has placed it or set it aside
   */
  record Fact(
      Instant place, long n, Entry entry, Optional<Judged> judged, long known, boolean settled) {}

  private Chronicle() {}

  static List<Fact> of(List<Entry> log) {
    List<Fact> facts = new ArrayList<>();
    for (int n = 0; n < log.size(); n++) {
      Entry entry = log.get(n);
      long known = newest(log, n);
      Optional<Judged> judged =
          entry instanceof Entry.TorqueTaken ? Optional.of(judged(log, known)) : Optional.empty();
      Instant place =
          entry instanceof Entry.TorqueTaken t && t.timing().tardy() ? t.moment() : entry.at();
      facts.add(new Fact(place, n, entry, judged, known, settled(log).contains((long) n)));
    }
    facts.sort(Comparator.comparing(Fact::place).thenComparing(Fact::n));
    return facts;
  }

  private static long newest(List<Entry> log, long n) {
    long newest = n;
    for (int i = 0; i < log.size(); i++) {
      if (log.get(i) instanceof Entry.Assigned a && a.assigns() == n
          || log.get(i) instanceof Entry.Reread r && r.rereads() == n) {
        newest = i;
      }
    }
    return newest;
  }

  private static Judged judged(List<Entry> log, long n) {
    Entry entry = log.get((int) n);
    return entry instanceof Entry.Assigned a
        ? a.judged()
        : entry instanceof Entry.Reread r ? r.judged() : ((Entry.TorqueTaken) entry).judged();
  }

  private static Set<Long> settled(List<Entry> log) {
    Set<Long> settled = new HashSet<>();
    for (Entry entry : log) {
      if (entry instanceof Entry.Assigned a) {
        settled.add(a.assigns());
      } else if (entry instanceof Entry.SetAside s) {
        settled.add(s.sets());
      }
    }
    return settled;
  }
}
