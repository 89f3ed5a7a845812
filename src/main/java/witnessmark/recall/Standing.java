package witnessmark.recall;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import witnessmark.entry.Effect;
import witnessmark.entry.Entry;
import witnessmark.entry.Gist;
import witnessmark.entry.Gist.Placed;

/**
 * The readings by which the joints of one job stand, each decided as it was last.
 *
 * <p>A joint stands by the last reading that was credited on it or made it nonconforming, and by
 * the re-checks since, as each of these may have turned it. Loosening it takes them away.
 */
final class Standing {
  private final Map<Long, Gist> taken = new LinkedHashMap<>();

  /** Of readings that were decided anew, how they were last. */
  private final Map<Long, Placed> decided = new HashMap<>();

  private final Map<Long, Instant> moved = new HashMap<>();
  private final Set<Long> aside = new HashSet<>();

  /**
   * A reading.
   *
   * @param n a torque event's entry
   * @param placed as it was decided last
   */
  record Reading(long n, Gist event, Placed placed) {}

  /** Takes in the job's next reading. */
  void take(long n, Gist reading) {
    taken.put(n, reading);
  }

  /** Takes in what else may change how a reading was decided. */
  void take(Entry entry) {
    if (entry instanceof Entry.Assigned e) {
      decided.put(e.assigns(), Placed.of(e.judged()));
      e.moment().ifPresent(m -> moved.put(e.assigns(), m));
    } else if (entry instanceof Entry.Reread e) {
      decided.put(e.rereads(), Placed.of(e.judged()));
    } else if (entry instanceof Entry.SetAside e) {
      aside.add(e.sets());
    }
  }

  /** A torque event that a person placed in this job and that came before it or from outside it. */
  void outside(long n, Gist event) {
    taken.putIfAbsent(n, event);
  }

  /** Entries that were assigned to this job and are not among its own. */
  Set<Long> missing() {
    Set<Long> missing = new HashSet<>(decided.keySet());
    missing.removeAll(taken.keySet());
    return missing;
  }

  /** What the joints stand by. */
  List<Reading> readings() {
    Map<String, List<Reading>> byFastener = new LinkedHashMap<>();
    inOrder().forEach(r -> change(byFastener, r));
    return byFastener.values().stream().flatMap(Collection::stream).toList();
  }

  private List<Reading> inOrder() {
    List<Reading> all = new ArrayList<>();
    taken.forEach(
        (n, event) -> {
          if (!aside.contains(n)) {
            all.add(new Reading(n, event, decided.getOrDefault(n, event.placed())));
          }
        });
    all.sort(Comparator.comparing(this::place).thenComparing(Reading::n));
    return all;
  }

  private Instant place(Reading reading) {
    Instant other = moved.isEmpty() ? null : moved.get(reading.n());
    return other == null ? reading.event().place() : other;
  }

  private static void change(Map<String, List<Reading>> byFastener, Reading reading) {
    if (reading.placed().fastener().isEmpty()) {
      return;
    }
    String fastener = reading.placed().fastener().get();
    Effect effect = reading.placed().effect();
    if (effect == Effect.CREDITED || effect == Effect.NONCONFORMING) {
      byFastener.put(fastener, new ArrayList<>(List.of(reading)));
    } else if (effect == Effect.RECHECKED) {
      byFastener.computeIfAbsent(fastener, f -> new ArrayList<>()).add(reading);
    } else if (effect == Effect.LOOSENED) {
      byFastener.remove(fastener);
    }
  }
}
