package witnessmark.sample;

import java.time.Instant;
import java.util.Comparator;

/** Something that happened in a job, by when it stands there. */
interface Fact {
  Comparator<Fact> IN_ORDER = Comparator.comparing(Fact::place).thenComparing(Fact::n);

  Instant place();

  long n();
}
