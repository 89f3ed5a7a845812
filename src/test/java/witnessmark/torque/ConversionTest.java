package witnessmark.torque;

import static org.assertj.core.api.Assertions.assertThat;
import static tech.units.indriya.unit.Units.KILOGRAM;
import static tech.units.indriya.unit.Units.METRE;
import static tech.units.indriya.unit.Units.NEWTON;
import static tech.units.indriya.unit.Units.SECOND;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Arrays;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import javax.measure.IncommensurableException;
import javax.measure.Unit;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Factors and codes against sources outside this program (docs/sources.md). */
class ConversionTest {
  private static final Unit<Length> INCH = METRE.multiply(254).divide(10_000);
  private static final Unit<Length> FOOT = INCH.multiply(12);
  private static final Unit<Mass> POUND = KILOGRAM.multiply(45_359_237L).divide(100_000_000L);
  private static final Unit<?> GRAVITY =
      METRE.divide(SECOND.pow(2)).multiply(980_665).divide(100_000);

  /** Each unit built from metre, kilogram and second in a library that is not ours. */
  private static final Map<TorqueUnit, Unit<?>> INDEPENDENT =
      Map.of(
          TorqueUnit.NEWTON_METRE, NEWTON.multiply(METRE),
          TorqueUnit.CENTINEWTON_METRE, NEWTON.multiply(METRE).divide(100),
          TorqueUnit.POUND_FORCE_FOOT, POUND.multiply(GRAVITY).multiply(FOOT),
          TorqueUnit.POUND_FORCE_INCH, POUND.multiply(GRAVITY).multiply(INCH),
          TorqueUnit.OUNCE_FORCE_INCH, POUND.divide(16).multiply(GRAVITY).multiply(INCH),
          TorqueUnit.KILOGRAM_FORCE_METRE, KILOGRAM.multiply(GRAVITY).multiply(METRE),
          TorqueUnit.KILOGRAM_FORCE_CENTIMETRE,
              KILOGRAM.multiply(GRAVITY).multiply(METRE).divide(100));

  private static BigDecimal independently(TorqueUnit unit, BigDecimal value)
      throws IncommensurableException {
    Number metres =
        INDEPENDENT.get(unit).getConverterToAny(NEWTON.multiply(METRE)).convert((Number) value);
    return new BigDecimal(metres.toString());
  }

  @ParameterizedTest
  @EnumSource(TorqueUnit.class)
  void aFactorIsExactlyThatOfAnIndependentLibrary(TorqueUnit unit) throws Exception {
    // JSR-385 reference implementation, tech.units:indriya: computed independently.
    assertThat(unit.newtonMetres()).isEqualByComparingTo(independently(unit, BigDecimal.ONE));
  }

  @Test
  void anyTorqueIsExactlyThatOfAnIndependentLibrary() throws Exception {
    long seed = 20261125;
    Random random = new Random(seed);
    for (int round = 0; round < 2000; round++) {
      TorqueUnit unit = TorqueUnit.values()[random.nextInt(TorqueUnit.values().length)];
      BigDecimal digits = BigDecimal.valueOf(random.nextInt(1_000_000), 2 + random.nextInt(5));
      Torque torque = Torque.of(digits.toPlainString(), unit);
      assertThat(torque.newtonMetres())
          .as("seed %d, round %d: %s", seed, round, torque)
          .isEqualByComparingTo(independently(unit, digits));
    }
  }

  @ParameterizedTest
  @CsvSource({
    "lbf.ft, 1.355818",
    "lbf.in, 0.1129848",
    "ozf.in, 0.007061552",
    "kgf.m, 9.80665",
  })
  void aFactorRoundsToTheSevenDigitsThatArePublished(String symbol, BigDecimal published) {
    // NIST SP 811, appendix B.8: read in public texts that quote it, not on its own page.
    assertThat(TorqueUnit.of(symbol).orElseThrow().newtonMetres().round(new MathContext(7)))
        .isEqualByComparingTo(published);
  }

  @ParameterizedTest
  @CsvSource({
    "lbf.ft, 1.3558179483314006",
    "lbf.in, 0.11298482902761672",
    "ozf.in, 0.0070615518142260435",
    "kgf.m, 9.8066499999999994",
  })
  void aFactorIsThatOfAUnitsProgramToThePrecisionOfADouble(String symbol, double printed) {
    // GNU units 2.22, `units -o %.17g -t "lbf ft" "N m"` and so on: computed independently.
    double ours = TorqueUnit.of(symbol).orElseThrow().newtonMetres().doubleValue();
    assertThat(Math.abs(ours / printed - 1)).isLessThan(1e-15);
  }

  @Test
  void theImperialFactorsFollowFromTheFourExactDefinitions() {
    BigDecimal force = new BigDecimal("0.45359237").multiply(new BigDecimal("9.80665"));
    BigDecimal inch = force.multiply(new BigDecimal("0.0254"));
    assertThat(TorqueUnit.POUND_FORCE_INCH.newtonMetres()).isEqualByComparingTo(inch);
    assertThat(TorqueUnit.POUND_FORCE_FOOT.newtonMetres())
        .isEqualByComparingTo(inch.multiply(BigDecimal.valueOf(12)));
    assertThat(TorqueUnit.OUNCE_FORCE_INCH.newtonMetres().multiply(BigDecimal.valueOf(16)))
        .isEqualByComparingTo(inch);
  }

  @ParameterizedTest
  @CsvSource({
    "N.m, NU",
    "cN.m, J72",
    "lbf.ft, M92",
    "lbf.in, F21",
    "ozf.in, L41",
    "kgf.m, B38", // deprecated there, and the only one
  })
  void aUnitHasItsCodeOfRecommendation20(String symbol, String code) {
    // UN/ECE Recommendation 20, revision 17e: read in a public copy of its table.
    assertThat(TorqueUnit.of(symbol).flatMap(TorqueUnit::rec20)).contains(code);
  }

  @Test
  void aUnitWithoutACodeClaimsNone() {
    assertThat(TorqueUnit.KILOGRAM_FORCE_CENTIMETRE.rec20()).isEmpty();
  }

  @Test
  void noCodeOfAnEnergyOrOfMassTimesLengthIsEverUsed() {
    // Recommendation 20, read in a public copy: 85 is the foot pound-force of energy; 4Q, 4R and IA
    // have factors in kg·m. All four look like torque by their names.
    Set<String> codes = new HashSet<>();
    Arrays.stream(TorqueUnit.values()).map(TorqueUnit::rec20).forEach(c -> c.ifPresent(codes::add));
    assertThat(codes).hasSize(6).doesNotContain("85", "4Q", "4R", "IA");
  }

  @Test
  void aUnitIsKnownByItsExactSymbolOnly() {
    for (TorqueUnit unit : TorqueUnit.values()) {
      assertThat(TorqueUnit.of(unit.symbol())).contains(unit);
      assertThat(TorqueUnit.of(unit.symbol() + " ")).isEmpty();
    }
    for (String other : new String[] {"Nm", "n.m", "N·m", "J", "ft.lbf", "lbf.ft.", "kN.m", ""}) {
      assertThat(TorqueUnit.of(other)).as(other).isEqualTo(Optional.empty());
    }
    assertThat(TorqueUnit.allowed()).isEqualTo("N.m cN.m lbf.ft lbf.in ozf.in kgf.m kgf.cm");
  }
}
