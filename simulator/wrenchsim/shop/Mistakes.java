package wrenchsim.shop;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import wrenchsim.shop.Mistake.Kind;

/** Which visits go wrong, and how: by script first, else by chance. */
public final class Mistakes {
  private static final List<Kind> USUAL = List.of(Kind.UNDER, Kind.OVER, Kind.REDELIVER);

  private final Map<String, Deque<Mistake>> script = new LinkedHashMap<>();
  private final Map<Kind, Double> rates = new EnumMap<>(Kind.class);
  private final Random chance;

  /**
   * No script yet.
   *
   * @param rates the share of visits that go wrong in each way by chance, 0 to 1 in all
   */
  public Mistakes(Map<Kind, Double> rates, Random chance) {
    this.rates.putAll(rates);
    this.chance = chance;
    double all = rates.values().stream().mapToDouble(Double::doubleValue).sum();
    if (!(all <= 1 + 1e-9) || rates.values().stream().anyMatch(r -> !(r >= 0))) {
      throw new IllegalArgumentException("a mistake rate is 0 to 1, but is " + all);
    }
  }

  /** No script yet, and no mistake by chance. */
  public static Mistakes none() {
    return new Mistakes(Map.of(), new Random(0));
  }

  /** A rate of mistakes that leave the person in no doubt: too little, too much, sent twice. */
  public static Map<Kind, Double> usual(double rate) {
    Map<Kind, Double> rates = new EnumMap<>(Kind.class);
    USUAL.forEach(kind -> rates.put(kind, rate / USUAL.size()));
    return rates;
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
    double drawn = chance.nextDouble();
    Deque<Mistake> scripted = script.get(fastener);
    if (scripted != null && !scripted.isEmpty()) {
      return Optional.of(scripted.poll());
    }
    for (Map.Entry<Kind, Double> each : rates.entrySet()) {
      drawn -= each.getValue();
      if (drawn < 0) {
        return Optional.of(Mistake.of(each.getKey()));
      }
    }
    return Optional.empty();
  }

  /** The fasteners whose script was not played to its end. */
  public List<String> unplayed() {
    return script.entrySet().stream()
        .filter(e -> !e.getValue().isEmpty())
        .map(Map.Entry::getKey)
        .toList();
  }
}
