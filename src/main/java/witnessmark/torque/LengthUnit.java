package witnessmark.torque;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Collectors;

/** A unit of length with its exact factor to millimetres. */
public enum LengthUnit {
  MILLIMETRE("mm", "1"),
  CENTIMETRE("cm", "10"),
  METRE("m", "1000"),
  INCH("in", "25.4");

  private final String symbol;
  private final BigDecimal millimetres;

  LengthUnit(String symbol, String millimetres) {
    this.symbol = symbol;
    this.millimetres = new BigDecimal(millimetres);
  }

  /** Millimetres in one of this unit, exactly. */
  public BigDecimal millimetres() {
    return millimetres;
  }

  /** The unit written so, or empty. */
  public static Optional<LengthUnit> of(String symbol) {
    return Arrays.stream(values()).filter(u -> u.symbol.equals(symbol)).findFirst();
  }

  /** All symbols, for messages that say what is allowed. */
  public static String allowed() {
    return Arrays.stream(values()).map(u -> u.symbol).collect(Collectors.joining(" "));
  }

  @Override
  public String toString() {
    return symbol;
  }
}
