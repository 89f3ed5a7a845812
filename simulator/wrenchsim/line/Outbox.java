package wrenchsim.line;

import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A wrench's memory of frames without an answer. Times are milliseconds of any clock that only
 * rises.
 */
final class Outbox {
  /** From docs/simulator-line.md. */
  static final Duration AGAIN_AFTER = Duration.ofSeconds(2);

  private final Map<Long, Kept> kept = new LinkedHashMap<>();

  private record Kept(byte[] frame, long sentAtMillis) {}

  /** Keeps a frame that goes out now. */
  void sent(long number, byte[] frame, long nowMillis) {
    kept.put(number, new Kept(frame.clone(), nowMillis));
  }

  /** Forgets a frame that was answered; false when there was none of this number. */
  boolean answered(long number) {
    return kept.remove(number) != null;
  }

  /** The frames to send again now, oldest first; each counts as sent now. */
  List<byte[]> due(long nowMillis) {
    List<byte[]> due = new ArrayList<>();
    kept.replaceAll(
        (number, entry) -> {
          if (nowMillis - entry.sentAtMillis() < AGAIN_AFTER.toMillis()) {
            return entry;
          }
          due.add(entry.frame());
          return new Kept(entry.frame(), nowMillis);
        });
    return due;
  }

  int size() {
    return kept.size();
  }
}
