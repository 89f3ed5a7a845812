package witnessmark.pipeline;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Which refused messages are told to whoever reads the daemon's log: of each source one a second,
 * with how many were left out before it. All of them are on record in any case.
 */
final class Refusals {
  /** So many sources are told apart; the one unheard for longest is forgotten first. */
  static final int SOURCES = 1000;

  private static final long PAUSE = 1_000_000_000L;

  /** A line to log; {@code leftOut} are those of the same source since the last one. */
  record Line(String source, String reason, long leftOut) {}

  private static final class Source {
    private long toldAt;
    private long leftOut;
    private String reason;
  }

  private final Map<String, Source> sources = new LinkedHashMap<>(16, 0.75f, true);

  /** A message was refused; the line to log for it, if it is one's turn. */
  Optional<Line> refused(String source, String reason, long nanoTime) {
    Source known = sources.get(source);
    if (known != null && nanoTime - known.toldAt < PAUSE) {
      known.leftOut++;
      known.reason = reason;
      return Optional.empty();
    }
    Source heard = known == null ? new Source() : known;
    Line line = new Line(source, reason, heard.leftOut);
    heard.toldAt = nanoTime;
    heard.leftOut = 0;
    sources.put(source, heard);
    if (sources.size() > SOURCES) {
      sources.remove(sources.keySet().iterator().next());
    }
    return Optional.of(line);
  }

  /** Lines for those that were left out and after which nothing more came for a second. */
  List<Line> overdue(long nanoTime) {
    List<Line> lines = new ArrayList<>();
    sources.forEach(
        (name, source) -> {
          if (source.leftOut > 0 && nanoTime - source.toldAt >= PAUSE) {
            lines.add(new Line(name, source.reason, source.leftOut - 1));
            source.toldAt = nanoTime;
            source.leftOut = 0;
          }
        });
    return lines;
  }
}
