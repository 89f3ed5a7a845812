package witnessmark.recall;

import java.math.BigDecimal;
import java.math.MathContext;
import java.time.Duration;
import java.time.Instant;

/**
 * The time between a good calibration and the one whose findings are in question.
 *
 * @param from the good calibration's day, included
 * @param to end of the day of the other, not included: readings of that day may have been taken
 *     before the wrench left
 * @param readings how many the wrench took between
 * @param start its deviation at the beginning, as the good calibration left it
 * @param found its deviation at the end, as found
 */
public record Span(Instant from, Instant to, long readings, ErrorCurve start, ErrorCurve found) {
  /**
   * @throws IllegalArgumentException when it ends before it begins
   */
  public Span {
    if (!from.isBefore(to)) {
      throw new IllegalArgumentException("the span ends at " + to + ", not after " + from);
    }
  }

  /** The deviation as found, in per cent. */
  BigDecimal atFound(Touch touch) {
    return found.at(touch.indicated());
  }

  /** The deviation at the beginning, in per cent. */
  BigDecimal atStart(Touch touch) {
    return start.at(touch.indicated());
  }

  /**
   * The deviation had it grown evenly with time, in per cent.
   *
   * @param start what {@link #atStart} says of the touch
   * @param found what {@link #atFound} says of it
   */
  BigDecimal byTime(Touch touch, BigDecimal start, BigDecimal found) {
    return grown(
        start,
        found,
        BigDecimal.valueOf(Duration.between(from, touch.moment()).toMillis()),
        BigDecimal.valueOf(Duration.between(from, to).toMillis()));
  }

  /** The deviation had it grown evenly with every reading, in per cent. */
  BigDecimal byOperations(Touch touch, BigDecimal start, BigDecimal found) {
    return grown(start, found, BigDecimal.valueOf(touch.order()), BigDecimal.valueOf(readings));
  }

  private static BigDecimal grown(
      BigDecimal start, BigDecimal found, BigDecimal part, BigDecimal whole) {
    BigDecimal share = part.max(BigDecimal.ZERO).min(whole);
    return start.add(found.subtract(start).multiply(share).divide(whole, MathContext.DECIMAL64));
  }
}
