package witnessmark.torque;

import java.math.BigDecimal;

/**
 * Degrees turned since the snug threshold, kept as written; −100 000 to 100 000.
 *
 * @param degrees the number as sent
 */
public record Angle(Digits degrees) implements Comparable<Angle> {
  private static final BigDecimal LIMIT = new BigDecimal("100000");

  /**
   * @throws IllegalArgumentException when out of range
   */
  public Angle {
    if (degrees.value().abs().compareTo(LIMIT) > 0) {
      throw new IllegalArgumentException(
          "angle " + degrees + " is out of range; -100000 to 100000 degrees is allowed");
    }
  }

  public static Angle of(String degrees) {
    return new Angle(new Digits(degrees));
  }

  /** This angle after that many degrees. */
  public Angle plus(BigDecimal before) {
    return of(degrees.value().add(before).toPlainString());
  }

  @Override
  public int compareTo(Angle other) {
    return degrees.value().compareTo(other.degrees.value());
  }

  @Override
  public String toString() {
    return degrees.text();
  }
}
