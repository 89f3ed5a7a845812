package witnessmark.torque;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * A unit of torque with its exact factor to newton metres.
 *
 * <p>The factors follow from four exact definitions: inch 0.0254 m, foot 0.3048 m, pound 0.453 592
 * 37 kg and standard gravity 9.806 65 m/s² (NIST SP 811, appendix B.8, prints them to seven
 * digits).
 */
public enum TorqueUnit {
  NEWTON_METRE("N.m", "1", "NU"),
  CENTINEWTON_METRE("cN.m", "0.01", "J72"),
  POUND_FORCE_FOOT("lbf.ft", "1.3558179483314004", "M92"),
  POUND_FORCE_INCH("lbf.in", "0.1129848290276167", "F21"),
  OUNCE_FORCE_INCH("ozf.in", "0.00706155181422604375", "L41"),
  KILOGRAM_FORCE_METRE("kgf.m", "9.80665", "B38"),
  /** UN/ECE Recommendation 20 has no code for it, so none is claimed. */
  KILOGRAM_FORCE_CENTIMETRE("kgf.cm", "0.0980665", null);

  private static final Map<String, TorqueUnit> BY_SYMBOL =
      Arrays.stream(values()).collect(Collectors.toMap(TorqueUnit::symbol, u -> u));

  private final String symbol;
  private final BigDecimal newtonMetres;
  private final String rec20;

  TorqueUnit(String symbol, String newtonMetres, String rec20) {
    this.symbol = symbol;
    this.newtonMetres = new BigDecimal(newtonMetres);
    this.rec20 = rec20;
  }

  /** The unit as written in messages and procedures, e.g. {@code lbf.ft}. */
  public String symbol() {
    return symbol;
  }

  /** Newton metres in one of this unit, exactly. */
  public BigDecimal newtonMetres() {
    return newtonMetres;
  }

  /** The unit's common code of UN/ECE Recommendation 20, where it has one. */
  public Optional<String> rec20() {
    return Optional.ofNullable(rec20);
  }

  /** The unit written so, or empty; letter case counts. */
  public static Optional<TorqueUnit> of(String symbol) {
    return Optional.ofNullable(BY_SYMBOL.get(symbol));
  }

  /** All symbols, for messages that say what is allowed. */
  public static String allowed() {
    return Arrays.stream(values()).map(TorqueUnit::symbol).collect(Collectors.joining(" "));
  }

  @Override
  public String toString() {
    return symbol;
  }
}
