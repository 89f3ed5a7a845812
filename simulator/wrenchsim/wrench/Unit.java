package wrenchsim.wrench;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * A unit of torque that a wrench can show, with its exact size in newton metres.
 *
 * <p>The sizes follow from inch = 0.0254 m, foot = 0.3048 m, pound = 0.453 592 37 kg and standard
 * gravity 9.806 65 m/s² (NIST SP 811, appendix B.8, prints them to seven digits).
 */
public enum Unit {
  NEWTON_METRE("N.m", "1"),
  CENTINEWTON_METRE("cN.m", "0.01"),
  POUND_FORCE_FOOT("lbf.ft", "1.3558179483314004"),
  POUND_FORCE_INCH("lbf.in", "0.1129848290276167"),
  OUNCE_FORCE_INCH("ozf.in", "0.00706155181422604375"),
  KILOGRAM_FORCE_METRE("kgf.m", "9.80665"),
  KILOGRAM_FORCE_CENTIMETRE("kgf.cm", "0.0980665");

  private final String symbol;
  private final BigDecimal newtonMetres;

  Unit(String symbol, String newtonMetres) {
    this.symbol = symbol;
    this.newtonMetres = new BigDecimal(newtonMetres);
  }

  /** The unit as it goes over the wire. */
  public String symbol() {
    return symbol;
  }

  /** So much of this unit in N·m. */
  public double toNm(BigDecimal amount) {
    return amount.multiply(newtonMetres).doubleValue();
  }

  /** So many N·m in this unit, with far more digits than any wrench shows. */
  public BigDecimal fromNm(double nm) {
    return BigDecimal.valueOf(nm).divide(newtonMetres, java.math.MathContext.DECIMAL128);
  }

  /** The unit written so, or empty; letter case counts. */
  public static Optional<Unit> of(String symbol) {
    return Arrays.stream(values()).filter(u -> u.symbol.equals(symbol)).findFirst();
  }

  /** All symbols, for messages that say what is allowed. */
  public static String allowed() {
    return Arrays.stream(values()).map(Unit::symbol).collect(Collectors.joining(" "));
  }
}
