package witnessmark.procedure;

import java.math.BigDecimal;
import java.util.Objects;
import java.util.Optional;

/**
 * How a second hit on a tight fastener is told from the next fastener.
 *
 * @param recheckAngle degrees that a tight fastener turns at most when it is hit again; 0 means
 *     that the angle tells nothing here
 * @param scatter standard deviation of the angle from one fresh fastener of the group to another,
 *     in per cent of their mean, as assumed until the group has shown its own
 * @param secondsBetween the shortest time in which a hand reaches the next fastener, where stated
 */
public record Telling(
    BigDecimal recheckAngle, BigDecimal scatter, Optional<BigDecimal> secondsBetween) {
  /** 5 degrees and 10 %: common practice, no source. */
  public static final Telling USUAL =
      new Telling(BigDecimal.valueOf(5), BigDecimal.TEN, Optional.empty());

  /**
   * @throws IllegalArgumentException when a number is negative, or the scatter 0 or above 100
   */
  public Telling {
    Objects.requireNonNull(secondsBetween, "secondsBetween");
    if (recheckAngle.signum() < 0
        || scatter.signum() <= 0
        || scatter.compareTo(BigDecimal.valueOf(100)) > 0
        || secondsBetween.filter(s -> s.signum() < 0).isPresent()) {
      throw new IllegalArgumentException("recheck angle, scatter or seconds out of range");
    }
  }
}
