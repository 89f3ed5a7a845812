package witnessmark.torque;

import java.math.BigDecimal;
import java.util.Objects;

/**
 * A torque of 0 to 100 000 N·m, kept as it was written and compared exactly across units.
 *
 * <p>Two torques of equal size in different units are {@link #compareTo equal in size} but not
 * {@code equals}: the written form is part of the value.
 *
 * @param digits the number as sent
 * @param unit the unit as sent
 */
public record Torque(Digits digits, TorqueUnit unit) implements Comparable<Torque> {
  private static final BigDecimal HIGHEST = new BigDecimal("100000");

  /**
   * @throws IllegalArgumentException when negative or above 100 000 N·m
   */
  public Torque {
    Objects.requireNonNull(unit, "unit");
    if (digits.value().signum() < 0) {
      throw new IllegalArgumentException("torque " + digits + " is negative; 0 or more is allowed");
    }
    if (digits.value().multiply(unit.newtonMetres()).compareTo(HIGHEST) > 0) {
      throw new IllegalArgumentException(
          "torque " + digits + " " + unit + " is too large; at most 100000 N.m is allowed");
    }
  }

  /** The torque written so, e.g. {@code of("32.54", NEWTON_METRE)}. */
  public static Torque of(String digits, TorqueUnit unit) {
    return new Torque(new Digits(digits), unit);
  }

  /** Reads {@code "24 lbf.ft"}: digits, one blank, unit. */
  public static Torque parse(String text) {
    int blank = text.indexOf(' ');
    if (blank < 0) {
      throw new IllegalArgumentException(
          "\"" + text + "\" is not a torque; write number, blank, unit, e.g. \"24 lbf.ft\"");
    }
    String symbol = text.substring(blank + 1).strip();
    TorqueUnit unit =
        TorqueUnit.of(symbol)
            .orElseThrow(
                () ->
                    new IllegalArgumentException(
                        "unknown unit \"" + symbol + "\"; " + UnitSpelling.hint(symbol)));
    return of(text.substring(0, blank), unit);
  }

  /** Newton metres, exactly. */
  public BigDecimal newtonMetres() {
    // the usual unit, asked for in inner loops
    return unit == TorqueUnit.NEWTON_METRE
        ? digits.value()
        : digits.value().multiply(unit.newtonMetres());
  }

  @Override
  public int compareTo(Torque other) {
    return newtonMetres().compareTo(other.newtonMetres());
  }

  /** Number and unit as written, e.g. {@code 32.54 N.m}. */
  @Override
  public String toString() {
    return digits + " " + unit;
  }
}
