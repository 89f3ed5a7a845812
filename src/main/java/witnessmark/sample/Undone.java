package witnessmark.sample;

import java.time.Instant;
import java.util.Optional;
import java.util.Set;

/**
 * What had been done is pending again.
 *
 * @param fastener the one that is to be reworked or replaced
 * @param stages as {@code step:pass}
 */
record Undone(long n, Instant place, Optional<String> fastener, Set<String> stages)
    implements Fact {
  Undone {
    stages = Set.copyOf(stages);
  }
}
