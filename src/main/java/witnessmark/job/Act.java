package witnessmark.job;

import java.time.Instant;
import java.util.Comparator;
import java.util.Objects;
import java.util.Optional;
import witnessmark.entry.Entry;
import witnessmark.entry.Judged;

/**
 * One fact of a job at its place in the order in which things happened.
 *
 * @param moment its place; equal ones follow their entries' numbers
 * @param n the entry that made it known
 * @param entry that entry
 * @param judged the decision that counts now, for a torque event
 * @param byPerson whether a person made that decision, so that it is not read again
 */
public record Act(Instant moment, long n, Entry entry, Optional<Judged> judged, boolean byPerson) {
  static final Comparator<Act> ORDER = Comparator.comparing(Act::moment).thenComparing(Act::n);

  public Act {
    Objects.requireNonNull(moment, "moment");
    Objects.requireNonNull(entry, "entry");
    Objects.requireNonNull(judged, "judged");
  }

  /** A fact that stands where the bridge took it. */
  public static Act of(long n, Entry entry) {
    return new Act(entry.at(), n, entry, Optional.empty(), false);
  }

  /** A torque event: where it came, or where it happened if it came late. */
  public static Act of(long n, Entry.TorqueTaken entry) {
    return new Act(entry.place(), n, entry, Optional.of(entry.judged()), false);
  }

  /** The same event, decided otherwise. */
  public Act decided(Judged other) {
    return new Act(moment, n, entry, Optional.of(other), byPerson);
  }

  Act decidedByPerson(Judged other) {
    return new Act(moment, n, entry, Optional.of(other), true);
  }
}
