package wrenchsim.shop;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import wrenchsim.shop.Mistake.Kind;

/** Which visits go wrong, and how: by script first, else by chance. */
public final class Mistakes {
  private static final List<Kind> BY_CHANCE = List.of(Kind.UNDER, Kind.OVER, Kind.REDELIVER);

  private final Map<String, Deque<Mistake>> script = new LinkedHashMap<>();
  private final double rate;
  private final Random chance;

  /**
   * No script yet.
   *
   * @param rate the share of visits that go wrong by chance, 0 to 1
   */
  public Mistakes(double rate, Random chance) {
    if (!(rate >= 0 && rate <= 1)) {
      throw new IllegalArgumentException("a mistake rate is 0 to 1, but is " + rate);
    }
    this.rate = rate;
    this.chance = chance;
  }

  /**
   * Adds to the script: the first for a fastener is for its first visit, the next for its second.
   */
  public Mistakes script(String fastener, Mistake mistake) {
    script.computeIfAbsent(fastener, f -> new ArrayDeque<>()).add(mistake);
    return this;
  }

  /** What goes wrong at this visit to a fastener, if anything. */
  Optional<Mistake> next(String fastener) {
    boolean wrong = chance.nextDouble() < rate;
    Kind kind = BY_CHANCE.get(chance.nextInt(BY_CHANCE.size()));
    Deque<Mistake> scripted = script.get(fastener);
    if (scripted != null && !scripted.isEmpty()) {
      return Optional.of(scripted.poll());
    }
    return wrong ? Optional.of(Mistake.of(kind)) : Optional.empty();
  }

  /** The fasteners whose script was not played to its end. */
  public List<String> unplayed() {
    return script.entrySet().stream()
        .filter(e -> !e.getValue().isEmpty())
        .map(Map.Entry::getKey)
        .toList();
  }
}
