package witnessmark.sample;

import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * What was found.
 *
 * @param studies one for each step, pass and band
 * @param beside readings that belong to none of them, by why
 */
public record Gathered(List<Study> studies, Map<Omission, Integer> beside) {
  public Gathered {
    studies = List.copyOf(studies);
    Map<Omission, Integer> copy = new EnumMap<>(Omission.class);
    copy.putAll(beside);
    beside = Collections.unmodifiableMap(copy);
  }
}
