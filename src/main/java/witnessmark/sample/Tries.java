package witnessmark.sample;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import witnessmark.stats.Share;
import witnessmark.torque.Verdict;

/**
 * How the tries to tighten what was due ended.
 *
 * @param verdicts how many of each
 * @param firsts how many fasteners were tried at all
 * @param firstsAccepted how many of them were in band and credited at the first try
 */
public record Tries(Map<Verdict, Integer> verdicts, int firsts, int firstsAccepted) {
  public Tries {
    Map<Verdict, Integer> copy = new EnumMap<>(Verdict.class);
    copy.putAll(verdicts);
    verdicts = Collections.unmodifiableMap(copy);
  }

  /** How many tries there were. */
  public int all() {
    return verdicts.values().stream().mapToInt(Integer::intValue).sum();
  }

  /** The share of tries that ended so; empty where there was none. */
  public Optional<Share> share(Verdict verdict) {
    return all() == 0
        ? Optional.empty()
        : Optional.of(new Share(verdicts.getOrDefault(verdict, 0), all()));
  }

  /**
   * The share of fasteners done at the first try; empty where none was tried for the first time.
   */
  public Optional<Share> firstPass() {
    return firsts == 0 ? Optional.empty() : Optional.of(new Share(firstsAccepted, firsts));
  }
}
