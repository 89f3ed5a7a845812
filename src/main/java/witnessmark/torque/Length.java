package witnessmark.torque;

import java.math.BigDecimal;
import java.util.Objects;

/**
 * A length of 0 to 10 m, kept as it was written.
 *
 * @param digits the number as written
 * @param unit the unit as written
 */
public record Length(Digits digits, LengthUnit unit) {
  private static final BigDecimal LONGEST = new BigDecimal("10000");

  /**
   * @throws IllegalArgumentException when negative or above 10 m
   */
  public Length {
    Objects.requireNonNull(unit, "unit");
    if (digits.value().signum() < 0
        || digits.value().multiply(unit.millimetres()).compareTo(LONGEST) > 0) {
      throw new IllegalArgumentException(
          "length " + digits + " " + unit + " is out of range; 0 to 10 m is allowed");
    }
  }

  /** Reads {@code "350 mm"}: digits, one blank, unit. */
  public static Length parse(String text) {
    int blank = text.indexOf(' ');
    if (blank < 0) {
      throw new IllegalArgumentException(
          "\"" + text + "\" is not a length; write number, blank, unit, e.g. \"350 mm\"");
    }
    String symbol = text.substring(blank + 1).strip();
    LengthUnit unit =
        LengthUnit.of(symbol)
            .orElseThrow(
                () ->
                    new IllegalArgumentException(
                        "unknown unit \"" + symbol + "\"; allowed are " + LengthUnit.allowed()));
    return new Length(new Digits(text.substring(0, blank)), unit);
  }

  /** Millimetres, exactly. */
  public BigDecimal millimetres() {
    return digits.value().multiply(unit.millimetres());
  }

  /** Number and unit as written, e.g. {@code 350 mm}. */
  @Override
  public String toString() {
    return digits + " " + unit;
  }
}
