package witnessmark.trial;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import witnessmark.entry.Entry;
import witnessmark.pipeline.Seen;

/** A log in memory, for trials of the core: the entries, and what may be asked of them. */
final class MemoryLog implements Seen {
  private final List<Entry> entries = new ArrayList<>();
  private final Set<String> fingerprints = new HashSet<>();
  private final Map<String, List<Entry.TorqueTaken>> numbered = new HashMap<>();
  private final List<Ended> ended = new ArrayList<>();
  private final Map<String, Entry.JobOpened> open = new HashMap<>();

  private record Ended(String job, String station, Instant from, Instant to) {}

  long append(Entry entry) {
    if (entry instanceof Entry.TorqueTaken t) {
      fingerprints.add(t.event().wrench() + t.fingerprint());
      if (t.event().number().isPresent()) {
        String key = t.event().wrench() + "#" + t.event().number().getAsLong();
        numbered.computeIfAbsent(key, k -> new ArrayList<>()).add(t);
      }
    } else if (entry instanceof Entry.JobOpened o) {
      open.put(o.job(), o);
    } else if (entry instanceof Entry.JobClosed c) {
      end(c.job(), c.at());
    } else if (entry instanceof Entry.JobAbandoned a) {
      end(a.job(), a.at());
    }
    entries.add(entry);
    return entries.size() - 1L;
  }

  private void end(String job, Instant at) {
    Entry.JobOpened opened = open.remove(job);
    ended.add(new Ended(job, opened.station(), opened.at(), at));
  }

  Entry get(long n) {
    return entries.get((int) n);
  }

  long size() {
    return entries.size();
  }

  @Override
  public boolean before(String wrench, OptionalLong number, String fingerprint) {
    return fingerprints.contains(wrench + fingerprint);
  }

  @Override
  public List<Entry.TorqueTaken> numbered(String wrench, long number) {
    return numbered.getOrDefault(wrench + "#" + number, List.of());
  }

  @Override
  public Optional<Entry> entry(long n) {
    return n < entries.size() ? Optional.of(get(n)) : Optional.empty();
  }

  /** These trials scan nothing. */
  @Override
  public Optional<Entry.Scan> scan(String station) {
    return Optional.empty();
  }

  @Override
  public Optional<String> endedJob(String station, Instant moment) {
    return ended.stream()
        .filter(e -> e.station().equals(station))
        .filter(e -> !moment.isBefore(e.from()) && moment.isBefore(e.to()))
        .map(Ended::job)
        .findFirst();
  }
}
