package witnessmark.pipeline;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import witnessmark.entry.Entry;

/** What a list of entries knows, read through from its beginning or its end. */
public record SeenInList(List<Entry> log) implements Seen {
  @Override
  public boolean before(String wrench, OptionalLong number, String fingerprint) {
    return log.stream()
        .anyMatch(
            e ->
                e instanceof Entry.TorqueTaken t
                    && t.event().wrench().equals(wrench)
                    && t.fingerprint().equals(fingerprint));
  }

  @Override
  public Optional<Entry> entry(long n) {
    return n < log.size() ? Optional.of(log.get((int) n)) : Optional.empty();
  }

  @Override
  public Optional<Entry.Scan> scan(String station) {
    for (int n = log.size() - 1; n >= 0; n--) {
      if (log.get(n) instanceof Entry.Scan s && s.station().equals(station)) {
        return Optional.of(s);
      }
    }
    return Optional.empty();
  }
}
