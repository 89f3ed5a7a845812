package witnessmark.wrench;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import witnessmark.entry.Source;

/**
 * By which ways a wrench may report, from a moment on.
 *
 * @param sources empty for any
 */
public record Binding(Instant from, List<Source> sources) {
  public Binding {
    Objects.requireNonNull(from, "from");
    sources = List.copyOf(sources);
  }

  boolean covers(String channel, String station) {
    return sources.isEmpty() || sources.stream().anyMatch(s -> s.covers(channel, station));
  }
}
