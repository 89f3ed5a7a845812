package wrenchsim.shop;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import wrenchsim.truth.Happening;
import wrenchsim.wire.VerdictMessage;
import wrenchsim.wrench.Reading;

/** What was sent and waits for its verdict. */
final class Unheard {
  private record Key(String wrench, Optional<Long> event) {}

  private final Map<Key, Deque<Happening>> waiting = new HashMap<>();

  /** A reading went out; of several with the same number only the newest can be meant. */
  void sent(Happening happening) {
    Reading reading = happening.reading();
    Deque<Happening> same =
        waiting.computeIfAbsent(
            new Key(reading.wrench(), reading.event()), k -> new ArrayDeque<>());
    if (reading.event().isPresent()) {
      same.clear();
    }
    same.add(happening);
  }

  /** What a verdict is about, once; without a number, the oldest that showed this torque. */
  Optional<Happening> take(VerdictMessage verdict) {
    Key key = new Key(verdict.wrench(), verdict.event());
    Deque<Happening> same = waiting.getOrDefault(key, new ArrayDeque<>());
    Optional<Happening> found =
        same.stream()
            .filter(h -> verdict.torque().orElse(h.reading().torque()).equals(h.reading().torque()))
            .findFirst();
    found.ifPresent(same::remove);
    if (same.isEmpty()) {
      waiting.remove(key);
    }
    return found;
  }
}
