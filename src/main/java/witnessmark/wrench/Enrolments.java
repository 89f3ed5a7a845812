package witnessmark.wrench;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import witnessmark.entry.Source;

/**
 * Everything that was ever enrolled about one wrench, so that a reading that comes late is judged
 * by the calibration that was in force when it happened.
 *
 * @param all at least one, in the order of the log
 * @param bindings by which ways it may report, in the order of the log
 */
public record Enrolments(List<Wrench> all, List<Binding> bindings) {
  /**
   * @throws IllegalArgumentException when there is none, or they are of several wrenches
   */
  public Enrolments {
    all = List.copyOf(all);
    bindings = List.copyOf(bindings);
    if (all.stream().map(Wrench::serial).distinct().count() != 1) {
      throw new IllegalArgumentException("enrolments are of one wrench, and at least one");
    }
  }

  /** The first enrolment of a wrench. */
  public static Enrolments of(Wrench first) {
    return new Enrolments(List.of(first), List.of());
  }

  /** These and a newer one. */
  public Enrolments and(Wrench newer) {
    List<Wrench> more = new ArrayList<>(all);
    more.add(newer);
    return new Enrolments(more, bindings);
  }

  /** These with every calibration ended at a moment, as far as it went on. */
  public Enrolments ended(Instant from) {
    return new Enrolments(all.stream().map(w -> w.ended(from)).toList(), bindings);
  }

  /** These, bound anew. */
  public Enrolments bound(Binding binding) {
    List<Binding> more = new ArrayList<>(bindings);
    more.add(binding);
    return new Enrolments(all, more);
  }

  /** By which ways it may report now; empty for any. */
  public List<Source> sources() {
    return bindings.isEmpty() ? List.of() : bindings.get(bindings.size() - 1).sources();
  }

  /**
   * Whether the wrench may report that way.
   *
   * @param channel link and channel, as a torque entry has them
   * @param at when the reading came
   */
  public boolean mayReport(String channel, String station, Instant at) {
    for (int i = bindings.size() - 1; i >= 0; i--) {
      if (!at.isBefore(bindings.get(i).from())) {
        return bindings.get(i).covers(channel, station);
      }
    }
    return true;
  }

  /** What the newest says. */
  public Wrench newest() {
    return all.get(all.size() - 1);
  }

  /**
   * What counts for a moment: the newest enrolment whose calibration had begun by then; before the
   * first calibration, the oldest enrolment, whose calibration is not in force then.
   *
   * <p>So a newer enrolment also corrects an older one from its own calibration date on.
   */
  public Wrench at(Instant moment) {
    for (int i = all.size() - 1; i >= 0; i--) {
      if (!moment.isBefore(all.get(i).calibrated())) {
        return all.get(i);
      }
    }
    return all.get(0);
  }
}
