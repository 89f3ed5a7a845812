package witnessmark.torque;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BandTest {
  private static final BigDecimal TEN = new BigDecimal("10");

  private static Band percent(String torque, String percent) {
    return Band.plusMinusPercent(Torque.parse(torque), new BigDecimal(percent));
  }

  @ParameterizedTest
  @CsvSource({
    "17 lbf.ft, 15.3, 18.7, 20.74401460947042612, 23.0489051216338068, 25.35379563379718748",
    "25 N.m, 22.5, 27.5, 22.5, 25, 27.5",
  })
  void limitsOfTenPercentAreExactInNewtonMetres(
      String target, String low, String high, String lowNm, String targetNm, String highNm) {
    // Computed independently with exact fractions from the definitions of foot, pound and gravity.
    Band band = percent(target, "10");
    assertThat(band.low().digits()).hasToString(low);
    assertThat(band.high().digits()).hasToString(high);
    assertThat(band.low().newtonMetres()).isEqualByComparingTo(lowNm);
    assertThat(Torque.parse(target).newtonMetres()).isEqualByComparingTo(targetNm);
    assertThat(band.high().newtonMetres()).isEqualByComparingTo(highNm);
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource({
    "5/16 in fastener with high-strength threadlocker, 24 lbf.ft, 21.6 to 26.4 lbf.ft,"
        + " 29.28566768395824864, 32.5396307599536096, 35.79359383594897056",
    "1/2 in twelve-point bolt, 40 lbf.ft, 36 to 44 lbf.ft,"
        + " 48.8094461399304144, 54.232717933256016, 59.6559897265816176",
    "pivot and axle, 90 lbf.ft, 81 to 99 lbf.ft,"
        + " 109.8212538148434324, 122.023615349826036, 134.2259768848086396",
    "brake caliper fastener, 24 lbf.ft, 21.6 to 26.4 lbf.ft,"
        + " 29.28566768395824864, 32.5396307599536096, 35.79359383594897056",
  })
  void tradeValuesHaveExactBandsInBothUnits(
      String what, String target, String band, String lowNm, String targetNm, String highNm) {
    // The torques are common practice, no source: they check arithmetic, never a joint.
    Band found = percent(target, "10");
    assertThat(found).as(what).hasToString(band);
    assertThat(found.low().newtonMetres()).isEqualByComparingTo(lowNm);
    assertThat(Torque.parse(target).newtonMetres()).isEqualByComparingTo(targetNm);
    assertThat(found.high().newtonMetres()).isEqualByComparingTo(highNm);
    Torque same = Torque.of(lowNm, TorqueUnit.NEWTON_METRE);
    assertThat(found.side(same)).as("exactly on the limit").isEqualTo(Side.INSIDE);
    Torque less =
        Torque.of(
            new BigDecimal(lowNm).subtract(new BigDecimal("1e-20")).toPlainString(),
            TorqueUnit.NEWTON_METRE);
    assertThat(found.side(less)).as("a hair below the limit").isEqualTo(Side.BELOW);
  }

  @ParameterizedTest
  @CsvSource({
    // 25 N.m ± 10 % is 16.595 148 358 738 47 … 20.282 959 105 124 8 lbf·ft and
    // 199.141 780 304 861 65 … 243.395 509 261 497 58 lbf·in: computed independently; the digits
    // below lie on either side of those edges.
    "16.59514835873847, BELOW, lbf.ft",
    "16.59514835873848, INSIDE, lbf.ft",
    "20.28295910512479, INSIDE, lbf.ft",
    "20.28295910512481, ABOVE, lbf.ft",
    "199.1417803048616, BELOW, lbf.in",
    "199.1417803048617, INSIDE, lbf.in",
    "243.3955092614975, INSIDE, lbf.in",
    "243.3955092614976, ABOVE, lbf.in",
    // the band is 2250 … 2750 cN·m exactly
    "2249.99, BELOW, cN.m",
    "2250, INSIDE, cN.m",
    "2750.00, INSIDE, cN.m",
    "2750.01, ABOVE, cN.m",
  })
  void aReadingIsConvertedAndTheBandIsNot(String digits, Side side, String unit) {
    Torque reading = Torque.of(digits, TorqueUnit.of(unit).orElseThrow());
    assertThat(percent("25 N.m", "10").side(reading)).isEqualTo(side);
  }

  @Test
  void aRoundedSettingIsNotTheTorqueItStandsFor() {
    // 25 N·m is 18.439 053 731 9… lbf·ft, computed independently.
    assertThat(Torque.parse("18.44 lbf.ft")).isGreaterThan(Torque.parse("25 N.m"));
    assertThat(Torque.parse("18.439053731 lbf.ft")).isLessThan(Torque.parse("25 N.m"));
    assertThat(Torque.parse("18.439053732 lbf.ft")).isGreaterThan(Torque.parse("25 N.m"));
  }

  @Test
  void theEdgesOfAnyBandAreInsideWhateverUnitTheyAreWrittenIn() {
    long seed = 2;
    Random random = new Random(seed);
    for (int round = 0; round < 1000; round++) {
      TorqueUnit unit = TorqueUnit.values()[random.nextInt(TorqueUnit.values().length)];
      BigDecimal target = BigDecimal.valueOf(1 + random.nextInt(100_000), 2);
      Band band = Band.plusMinusPercent(Torque.of(target.toPlainString(), unit), TEN);
      Torque edge = Torque.of(band.low().newtonMetres().toPlainString(), TorqueUnit.NEWTON_METRE);
      String where = "seed " + seed + ", round " + round + ": " + band;
      assertThat(band.side(edge)).as(where).isEqualTo(Side.INSIDE);
      assertThat(band.side(band.high())).as(where).isEqualTo(Side.INSIDE);
      Torque more =
          Torque.of(band.high().digits().value().add(new BigDecimal("1e-9")).toPlainString(), unit);
      assertThat(band.side(more)).as(where).isEqualTo(Side.ABOVE);
    }
  }

  @Test
  void aToleranceMayBeATorqueInTheSameUnit() {
    Band band = Band.plusMinus(Torque.parse("45 N.m"), Torque.parse("4.5 N.m"));
    assertThat(band).hasToString("40.5 to 49.5 N.m");
    assertThat(new Band(Torque.parse("10 N.m"), Torque.parse("10 lbf.ft")))
        .hasToString("10 N.m to 10 lbf.ft");
    assertThatThrownBy(() -> Band.plusMinus(Torque.parse("45 N.m"), Torque.parse("3 lbf.ft")))
        .hasMessage("tolerance in lbf.ft but torque in N.m; use one unit");
  }

  @Test
  void aBandOfNothingAndABandDownToZeroAreBands() {
    assertThat(percent("45.50 N.m", "0")).hasToString("45.5 to 45.5 N.m");
    assertThat(percent("45 N.m", "100")).hasToString("0 to 90 N.m");
  }

  @Test
  void aToleranceOutOfRangeIsNamed() {
    assertThatThrownBy(() -> percent("45 N.m", "-1"))
        .hasMessage("tolerance -1 % is not within 0 to 100 %");
    assertThatThrownBy(() -> percent("45 N.m", "100.1"))
        .hasMessage("tolerance 100.1 % is not within 0 to 100 %");
    assertThatThrownBy(() -> Band.plusMinus(Torque.parse("4 N.m"), Torque.parse("5 N.m")))
        .hasMessage("torque -1 is negative; 0 or more is allowed");
  }

  @Test
  void aBandUpsideDownIsNamedEvenAcrossUnits() {
    assertThatThrownBy(() -> new Band(Torque.parse("25 N.m"), Torque.parse("18 lbf.ft")))
        .hasMessage("band upside down: lowest 25 N.m is above highest 18 lbf.ft");
  }

  @Test
  void anAngleWindowHoldsItsLimits() {
    AngleBand window = new AngleBand(Angle.of("20"), Angle.of("60.0"));
    assertThat(window.side(Angle.of("19.99"))).isEqualTo(Side.BELOW);
    assertThat(window.side(Angle.of("20.00"))).isEqualTo(Side.INSIDE);
    assertThat(window.side(Angle.of("6e1"))).isEqualTo(Side.INSIDE);
    assertThat(window.side(Angle.of("60.01"))).isEqualTo(Side.ABOVE);
    assertThat(window).hasToString("20 to 60.0 deg");
    assertThatThrownBy(() -> new AngleBand(Angle.of("60"), Angle.of("20")))
        .hasMessage("angle band upside down: lowest 60 is above highest 20");
  }
}
