package witnessmark.sample;

import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.SortedSet;
import java.util.TreeSet;
import witnessmark.stats.Analysis;
import witnessmark.stats.Limits;
import witnessmark.torque.Band;
import witnessmark.torque.TorqueUnit;

/**
 * What is on record of one step's pass in one band: never values of two bands.
 *
 * @param asked what was asked for, in words
 * @param revisions those in which the pass has this band
 * @param band at the fastener
 * @param values in the order in which they stand in their jobs
 * @param omitted how many readings are no values, by why
 * @param converted how many values were sent in another unit
 * @param counted how many values were credited by count, so that which of the group it was is not
 *     known
 */
public record Study(
    String asked,
    String procedure,
    SortedSet<String> revisions,
    String step,
    String pass,
    Band band,
    List<Value> values,
    Tries tries,
    Map<Omission, Integer> omitted,
    int converted,
    int counted) {
  public Study {
    revisions = Collections.unmodifiableSortedSet(new TreeSet<>(revisions));
    values = List.copyOf(values);
    Map<Omission, Integer> copy = new EnumMap<>(Omission.class);
    copy.putAll(omitted);
    omitted = Collections.unmodifiableMap(copy);
  }

  /** The unit of values and band: that of the procedure. */
  public TorqueUnit unit() {
    return band.low().unit();
  }

  /** {@code RAM-210 revision C, carrier-left, final pass}. */
  public String title() {
    return procedure
        + (revisions.size() == 1 ? " revision " : " revisions ")
        + String.join(", ", revisions)
        + ", "
        + step
        + ", "
        + pass
        + " pass";
  }

  /** The band's limits; a lower one of 0 is none, since no torque is below it. */
  public Limits limits() {
    double low = Conversion.to(unit(), band.low()).doubleValue();
    double high = Conversion.to(unit(), band.high()).doubleValue();
    return new Limits(
        low > 0 ? OptionalDouble.of(low) : OptionalDouble.empty(), OptionalDouble.of(high));
  }

  /**
   * What the values show.
   *
   * @throws IllegalArgumentException when there is none
   */
  public Analysis analysis() {
    return Analysis.of(values.stream().map(Value::number).toList(), limits());
  }
}
