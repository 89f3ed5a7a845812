package witnessmark.wrench;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import witnessmark.torque.Digits;
import witnessmark.torque.Torque;
import witnessmark.torque.WrenchKind;

/**
 * How wrenches of a type are to be calibrated.
 *
 * @param deviation permissible deviation in per cent of the reference, limit included
 * @param smallUpTo torque up to which, included, {@code smallDeviation} is permissible instead
 * @param smallDeviation given exactly where {@code smallUpTo} is
 * @param points shares of the range's upper end in per cent, rising, beside its lower end
 * @param readings how many at each point, at least; 1 to 100
 * @param months after how many it is due; 1 to 120
 * @param operations after how many readings it is due; at least 1
 */
public record CalibrationRule(
    Digits deviation,
    Optional<Torque> smallUpTo,
    Optional<Digits> smallDeviation,
    List<Digits> points,
    int readings,
    int months,
    long operations) {
  private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

  /**
   * @throws IllegalArgumentException when a number is out of its range
   */
  public CalibrationRule {
    Objects.requireNonNull(deviation, "deviation");
    points = List.copyOf(points);
    positive("deviation", deviation);
    smallDeviation.ifPresent(d -> positive("deviation", d));
    if (smallUpTo.isPresent() != smallDeviation.isPresent()) {
      throw new IllegalArgumentException(
          "a deviation for small torques and the torque up to which it holds go together");
    }
    BigDecimal before = BigDecimal.ZERO;
    for (Digits point : points) {
      if (point.value().compareTo(before) <= 0 || point.value().compareTo(HUNDRED) > 0) {
        throw new IllegalArgumentException(
            "points " + points + " % of the range must rise, above 0 and up to 100");
      }
      before = point.value();
    }
    between("readings", readings, 100);
    between("months", months, 120);
    between("operations", operations, 1_000_000_000L);
  }

  /**
   * The rule while the shop has made none.
   *
   * <p>From memory of ISO 6789, whose text was not at hand: 4 %, and 6 % up to 10 N·m; the lowest
   * marked value, about 60 % and 100 %; 5 readings at each; 12 months or 5 000 operations. The
   * wrench maker's instructions and the standard in hand go before it.
   *
   * @param kind the standard's sorts within a type differ, which this does not
   */
  public static CalibrationRule usual(WrenchKind kind) {
    Objects.requireNonNull(kind, "kind");
    return new CalibrationRule(
        new Digits("4"),
        Optional.of(Torque.parse("10 N.m")),
        Optional.of(new Digits("6")),
        List.of(new Digits("60"), new Digits("100")),
        5,
        12,
        5000);
  }

  /** The permissible deviation at a torque, in per cent of the reference. */
  public Digits permissible(Torque indicated) {
    return smallUpTo.filter(t -> indicated.compareTo(t) <= 0).isPresent()
        ? smallDeviation.orElseThrow()
        : deviation;
  }

  /** Torques in newton metres at which a wrench is to be calibrated, the lowest first. */
  public List<BigDecimal> points(Wrench wrench) {
    List<BigDecimal> found = new ArrayList<>(List.of(wrench.low().newtonMetres()));
    for (Digits share : points) {
      BigDecimal point = wrench.high().newtonMetres().multiply(share.value()).movePointLeft(2);
      if (point.compareTo(wrench.low().newtonMetres()) > 0) {
        found.add(point);
      }
    }
    return List.copyOf(found);
  }

  private static void positive(String name, Digits digits) {
    if (digits.value().signum() <= 0 || digits.value().compareTo(HUNDRED) >= 0) {
      throw new IllegalArgumentException(
          name + " " + digits + " % is out of range; above 0 and below 100 is allowed");
    }
  }

  private static void between(String name, long value, long most) {
    if (value < 1 || value > most) {
      throw new IllegalArgumentException(
          name + " " + value + " is out of range; 1 to " + most + " is allowed");
    }
  }
}
