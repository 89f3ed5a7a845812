package witnessmark.record;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.SortedMap;
import witnessmark.entry.Entry;

/**
 * How many of a job's entries are among some that were handed over, scans aside.
 *
 * @param job its name
 * @param ended whether its end is among them
 * @param belong how many its end says that it has up to there; empty where it does not say, or is
 *     not among them
 * @param here how many are among them up to its end
 */
public record Tally(String job, boolean ended, OptionalLong belong, long here) {
  /** One for each job that an entry names, in the order in which they come. */
  public static List<Tally> of(SortedMap<Long, Entry> entries) {
    Set<String> jobs = new LinkedHashSet<>();
    entries.values().forEach(e -> JobOf.entry(e).ifPresent(jobs::add));
    List<Tally> tallies = new ArrayList<>();
    jobs.forEach(job -> tallies.add(of(job, entries)));
    return tallies;
  }

  /** Whether its end says that it has more entries than are here, or fewer. */
  public boolean lacking() {
    return belong.isPresent() && belong.getAsLong() != here;
  }

  /** Whether its end says that it has as many entries as are here. */
  public boolean whole() {
    return belong.isPresent() && belong.getAsLong() == here;
  }

  private static Tally of(String job, SortedMap<Long, Entry> entries) {
    Optional<Map.Entry<Long, Entry>> end =
        entries.entrySet().stream().filter(e -> ends(job, e.getValue())).findFirst();
    SortedMap<Long, Entry> before = end.map(e -> entries.headMap(e.getKey() + 1)).orElse(entries);
    long here =
        before.values().stream()
            .filter(e -> JobOf.entry(e).equals(Optional.of(job)) && !(e instanceof Entry.Scan))
            .count();
    OptionalLong belong = end.map(e -> told(e.getValue())).orElse(OptionalLong.empty());
    return new Tally(job, end.isPresent(), belong, here);
  }

  private static boolean ends(String job, Entry entry) {
    return entry instanceof Entry.JobClosed c && c.job().equals(job)
        || entry instanceof Entry.JobAbandoned a && a.job().equals(job);
  }

  private static OptionalLong told(Entry end) {
    return end instanceof Entry.JobClosed c
        ? c.entries()
        : end instanceof Entry.JobAbandoned a ? a.entries() : OptionalLong.empty();
  }
}
