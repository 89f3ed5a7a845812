package witnessmark.torque;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** The spellings of units seen on torque tables and wrenches, and the unit that each means. */
public final class UnitSpelling {
  private static final int LONGEST = 16;

  /** By the spelling's letters alone, lower case. */
  private static final Map<String, TorqueUnit> MEANT =
      Map.ofEntries(
          Map.entry("nm", TorqueUnit.NEWTON_METRE),
          Map.entry("cnm", TorqueUnit.CENTINEWTON_METRE),
          Map.entry("lbft", TorqueUnit.POUND_FORCE_FOOT),
          Map.entry("ftlb", TorqueUnit.POUND_FORCE_FOOT),
          Map.entry("ftlbs", TorqueUnit.POUND_FORCE_FOOT),
          Map.entry("lbfft", TorqueUnit.POUND_FORCE_FOOT),
          Map.entry("ftlbf", TorqueUnit.POUND_FORCE_FOOT),
          Map.entry("lbin", TorqueUnit.POUND_FORCE_INCH),
          Map.entry("inlb", TorqueUnit.POUND_FORCE_INCH),
          Map.entry("inlbs", TorqueUnit.POUND_FORCE_INCH),
          Map.entry("lbfin", TorqueUnit.POUND_FORCE_INCH),
          Map.entry("inlbf", TorqueUnit.POUND_FORCE_INCH),
          Map.entry("ozin", TorqueUnit.OUNCE_FORCE_INCH),
          Map.entry("inoz", TorqueUnit.OUNCE_FORCE_INCH),
          Map.entry("ozfin", TorqueUnit.OUNCE_FORCE_INCH),
          Map.entry("kgm", TorqueUnit.KILOGRAM_FORCE_METRE),
          Map.entry("kgfm", TorqueUnit.KILOGRAM_FORCE_METRE),
          Map.entry("kgcm", TorqueUnit.KILOGRAM_FORCE_CENTIMETRE),
          Map.entry("kgfcm", TorqueUnit.KILOGRAM_FORCE_CENTIMETRE));

  private UnitSpelling() {}

  /** The unit that such a spelling means; it is never taken for that unit, only asked about. */
  public static Optional<TorqueUnit> meant(String symbol) {
    String letters =
        symbol.length() > LONGEST
            ? ""
            : symbol.replaceAll("[^A-Za-z]", "").toLowerCase(Locale.ROOT);
    return Optional.ofNullable(MEANT.get(letters));
  }

  /** What to write instead of an unknown symbol: the unit meant, where one is, and all allowed. */
  public static String hint(String symbol) {
    return meant(symbol).map(u -> "did you mean \"" + u + "\"? Allowed").orElse("allowed")
        + " are "
        + TorqueUnit.allowed();
  }
}
