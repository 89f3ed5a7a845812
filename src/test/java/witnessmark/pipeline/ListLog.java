package witnessmark.pipeline;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Stream;
import witnessmark.entry.Entry;

/** A log in memory: the entries, and what may be asked of them. */
public final class ListLog implements Seen {
  private final List<Entry> entries = new ArrayList<>();

  /** Appends an entry and answers its number. */
  public long append(Entry entry) {
    entries.add(entry);
    return entries.size() - 1L;
  }

  public List<Entry> entries() {
    return Collections.unmodifiableList(entries);
  }

  public Entry.TorqueTaken torque(long n) {
    return (Entry.TorqueTaken) entries.get((int) n);
  }

  @Override
  public List<Entry.TorqueTaken> same(String wrench, OptionalLong number, String fingerprint) {
    return of(Entry.TorqueTaken.class)
        .filter(t -> t.event().wrench().equals(wrench) && t.event().number().equals(number))
        .filter(t -> t.fingerprint().equals(fingerprint))
        .toList();
  }

  @Override
  public List<Entry.TorqueTaken> numbered(String wrench, long number) {
    return of(Entry.TorqueTaken.class)
        .filter(t -> t.event().wrench().equals(wrench))
        .filter(t -> t.event().number().equals(OptionalLong.of(number)))
        .toList();
  }

  @Override
  public Optional<Entry> entry(long n) {
    return n < entries.size() ? Optional.of(entries.get((int) n)) : Optional.empty();
  }

  @Override
  public Optional<Entry.Scan> scan(String station) {
    return of(Entry.Scan.class).filter(s -> s.station().equals(station)).reduce((a, b) -> b);
  }

  @Override
  public Optional<String> endedJob(String station, Instant moment) {
    String open = null;
    Set<String> ended = new HashSet<>();
    for (Entry e : entries) {
      Optional<String> left = left(e);
      if (e instanceof Entry.JobClosed || e instanceof Entry.JobAbandoned) {
        ended.add(left.orElseThrow());
      }
      if (e.at().isAfter(moment)) {
        continue;
      }
      if (e instanceof Entry.JobOpened o && o.station().equals(station)) {
        open = o.job();
      } else if (e instanceof Entry.JobResumed r && r.station().equals(station)) {
        open = r.job();
      } else if (left.isPresent() && left.get().equals(open)) {
        open = null;
      }
    }
    return Optional.ofNullable(open).filter(ended::contains);
  }

  /** The job that the entry takes from its station. */
  private static Optional<String> left(Entry entry) {
    if (entry instanceof Entry.JobSuspended s) {
      return Optional.of(s.job());
    } else if (entry instanceof Entry.JobClosed c) {
      return Optional.of(c.job());
    } else if (entry instanceof Entry.JobAbandoned a) {
      return Optional.of(a.job());
    }
    return Optional.empty();
  }

  private <E extends Entry> Stream<E> of(Class<E> kind) {
    return entries.stream().filter(kind::isInstance).map(kind::cast);
  }
}
