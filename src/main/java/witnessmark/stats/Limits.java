package witnessmark.stats;

import java.util.OptionalDouble;

/**
 * The specification's limits, in the values' unit.
 *
 * @param lower L; empty where nothing can be too small
 * @param upper U; empty where nothing can be too large
 */
public record Limits(OptionalDouble lower, OptionalDouble upper) {
  /**
   * @throws IllegalArgumentException when there is no limit, or they are not in order
   */
  public Limits {
    if (lower.isEmpty() && upper.isEmpty()) {
      throw new IllegalArgumentException("no limit; at least one is needed");
    }
    if (lower.isPresent() && upper.isPresent() && lower.getAsDouble() > upper.getAsDouble()) {
      throw new IllegalArgumentException(
          "lower limit " + lower.getAsDouble() + " is above the upper one, " + upper.getAsDouble());
    }
  }

  public static Limits between(double lower, double upper) {
    return new Limits(OptionalDouble.of(lower), OptionalDouble.of(upper));
  }

  public static Limits atMost(double upper) {
    return new Limits(OptionalDouble.empty(), OptionalDouble.of(upper));
  }

  /** Whether there are both limits. */
  public boolean both() {
    return lower.isPresent() && upper.isPresent();
  }
}
