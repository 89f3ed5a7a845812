package witnessmark.recall;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Comparator;

/**
 * A joint judged anew.
 *
 * @param error the wrench's error as found at this torque, in per cent of the true torque
 * @param assumed whether the torque lies outside the points as found, so that the error is that of
 *     the nearest
 * @param torque the torque at the fastener by that error, in newton metres, to 16 digits
 * @param out whether that is out of the band
 * @param outByTime whether it were, had the error grown evenly with time
 * @param outByOperations whether it were, had the error grown evenly with every reading
 * @param beyond by how much it is out, in per cent of the limit that is missed; 0 where it is not
 */
public record Rejudged(
    Touch touch,
    BigDecimal error,
    boolean assumed,
    BigDecimal torque,
    boolean out,
    boolean outByTime,
    boolean outByOperations,
    Outlook outlook,
    BigDecimal beyond) {
  /** Whom to call back first: by criticality, outlook, how far out, and then by entry. */
  public static final Comparator<Rejudged> FIRST =
      Comparator.comparing((Rejudged r) -> r.touch().criticality())
          .thenComparing(Rejudged::outlook)
          .thenComparing(Rejudged::beyond, Comparator.reverseOrder())
          .thenComparing(r -> r.touch().entry());

  private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

  /**
   * Judges a joint anew.
   *
   * <p>A wrench with deviation e shows X where the torque is X / (1 + e/100); an adapter changes
   * both alike. So the torque at the fastener is out of the band where {@code 100 T} lies outside
   * {@code low (100 + e)} to {@code high (100 + e)}. In between two errors it is in the band where
   * it is at both.
   */
  public static Rejudged of(Touch touch, Span span) {
    BigDecimal start = span.atStart(touch);
    BigDecimal found = span.atFound(touch);
    BigDecimal torque = torque(touch, found);
    boolean out = out(touch, found);
    boolean byTime = out(touch, span.byTime(touch, start, found));
    boolean byOperations = out(touch, span.byOperations(touch, start, found));
    return new Rejudged(
        touch,
        found,
        !span.found().covers(touch.indicated()),
        torque,
        out,
        byTime,
        byOperations,
        outlook(out, byTime, byOperations, out(touch, start) || out(touch, BigDecimal.ZERO)),
        out ? beyond(touch, torque) : BigDecimal.ZERO);
  }

  private static Outlook outlook(boolean out, boolean byTime, boolean byOperations, boolean less) {
    if (out) {
      return byTime && byOperations ? Outlook.OUT : Outlook.OUT_IF_WRONG_FROM_THE_START;
    }
    return less || byTime || byOperations
        ? Outlook.OUT_AT_A_SMALLER_ERROR
        : Outlook.IN_WHATEVER_THE_ERROR;
  }

  private static BigDecimal torque(Touch touch, BigDecimal error) {
    return touch
        .atFastener()
        .newtonMetres()
        .multiply(HUNDRED)
        .divide(HUNDRED.add(error), MathContext.DECIMAL64);
  }

  private static boolean out(Touch touch, BigDecimal error) {
    BigDecimal shown = touch.atFastener().newtonMetres().multiply(HUNDRED);
    BigDecimal factor = HUNDRED.add(error);
    return shown.compareTo(touch.low().newtonMetres().multiply(factor)) < 0
        || shown.compareTo(touch.high().newtonMetres().multiply(factor)) > 0;
  }

  /** By how much a torque that is out of the band is so. */
  private static BigDecimal beyond(Touch touch, BigDecimal torque) {
    BigDecimal low = touch.low().newtonMetres();
    BigDecimal high = touch.high().newtonMetres();
    BigDecimal missed = torque.compareTo(low) < 0 ? low : high;
    return missed.signum() > 0
        ? torque.subtract(missed).abs().multiply(HUNDRED).divide(missed, MathContext.DECIMAL64)
        : BigDecimal.ZERO;
  }
}
