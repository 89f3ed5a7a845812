package witnessmark.torque;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AdapterTest {
  private static Adapter adapter(String lever, String offset, String angle) {
    return new Adapter(Length.parse(lever), Length.parse(offset), Angle.of(angle));
  }

  /**
   * Worked examples as published, read in stored public copies; the manuals print whole numbers,
   * the quotients behind them were computed independently, in exact fractions.
   *
   * <p>TM 1-1500-204-23-9 (figure 8-16): 300 in-lb, 10 in, 4 in, the wrench shows 214. TM
   * 9-2350-277-40&amp;P: 40 lb-ft, 12 in, 4 in, set 30. NAVEDTRA 14315 (figure 3-45): 100 in-lb, 12
   * in, 6 in, prints 66.7. TM 5-3805-274-13&amp;P: 19 lb-ft, 22 in, 3 in, prints 17, having rounded
   * the ratio to 1.14 first. A helicopter's maintenance manual (page 20.4 of 25 October 2010): 135
   * in-lb, 10 in, 1.5 in, 117.39 lengthened and 158.82 shortened.
   */
  @ParameterizedTest
  @CsvSource({
    "300, 10 in, 4 in, 0, 214.285714286, 214, 0",
    "40, 12 in, 4 in, 0, 30, 30, 0",
    "100, 12 in, 6 in, 0, 66.6666666667, 66.7, 1",
    "19, 22 in, 3 in, 0, 16.72, 17, 0",
    "135, 10 in, 1.5 in, 0, 117.391304348, 117.39, 2",
    "135, 10 in, 1.5 in, 180, 158.823529412, 158.82, 2",
  })
  void theReadingForATorqueAtTheFastenerIsThatOfThePublishedExamples(
      String atFastener,
      String lever,
      String offset,
      String angle,
      String computed,
      String printed,
      int decimals) {
    BigDecimal reading =
        adapter(lever, offset, angle).atDrive(new BigDecimal(atFastener), new MathContext(12));
    assertThat(reading).isEqualByComparingTo(computed);
    assertThat(reading.setScale(decimals, RoundingMode.HALF_UP)).isEqualByComparingTo(printed);
  }

  /** TM 9-254, figure 4-5: a setting of 60 in. lbs. on 12 and 2 inches gives 70 in. lbs. */
  @Test
  void theTorqueAtTheFastenerIsThatOfThePublishedExample() {
    Adapter straight = adapter("12 in", "2 in", "0");
    assertThat(straight.atFastener(new BigDecimal("60"), MathContext.DECIMAL64))
        .isEqualByComparingTo("70");
    Torque reading = Torque.parse("60 lbf.in");
    assertThat(straight.compare(reading, BigDecimal.ONE, Torque.parse("70 lbf.in"))).isZero();
    assertThat(straight.compare(reading, BigDecimal.ONE, Torque.parse("70.000001 lbf.in")))
        .isNegative();
    assertThat(straight.compare(reading, BigDecimal.ONE, Torque.parse("69.999999 lbf.in")))
        .isPositive();
  }

  /**
   * TM 9-254, figure 4-6, gives the formula for an angle, L = l_T + l_A cos a (the copy read prints
   * the sign as x); the number at 45 degrees was computed from it independently.
   */
  @Test
  void anAngledAdapterCountsWithItsCosine() {
    assertThat(adapter("12 in", "2 in", "45").atFastener(new BigDecimal("60"), new MathContext(8)))
        .isEqualByComparingTo("67.071068");
  }

  /**
   * NAVEDTRA 14008, beside figure 2-12: pointed back toward the handle the extension is subtracted;
   * at a right angle "the actual value does not change".
   */
  @Test
  void aRightAngleChangesNothingAndFoldedBackIsSubtracted() {
    Adapter square = adapter("350 mm", "40 mm", "90");
    assertThat(square.compare(Torque.parse("45 N.m"), BigDecimal.ONE, Torque.parse("45 N.m")))
        .isZero();
    Adapter back = adapter("350 mm", "70 mm", "180");
    assertThat(back.compare(Torque.parse("50 N.m"), BigDecimal.ONE, Torque.parse("40 N.m")))
        .isZero();
  }

  @Test
  void aLimitIsDecidedExactlyThoughTheQuotientNeverEnds() {
    // factor 7/6: 45 N.m at the fastener is 38.571428... at the drive
    Adapter adapter = adapter("300 mm", "5 cm", "0");
    Band band = new Band(Torque.parse("45 N.m"), Torque.parse("70 N.m"));
    assertThat(adapter.side(band, Torque.parse("38.571428571428571428 N.m"))).isEqualTo(Side.BELOW);
    assertThat(adapter.side(band, Torque.parse("38.571428571428571429 N.m")))
        .isEqualTo(Side.INSIDE);
    assertThat(adapter.side(band, Torque.parse("60 N.m"))).isEqualTo(Side.INSIDE);
    assertThat(adapter.side(band, Torque.parse("60.000000000000000001 N.m"))).isEqualTo(Side.ABOVE);
  }

  @Test
  void withoutAnAdapterTheTorqueAtTheFastenerIsTheReading() {
    Torque reading = Torque.parse("24 lbf.ft");
    assertThat(Adapter.NONE.compare(reading, BigDecimal.ONE, reading)).isZero();
  }

  @Test
  void theCosineIsExactWhereItIsARoundNumber() {
    String[][] known = {{"0", "1"}, {"60", "0.5"}, {"90", "0"}, {"120", "-0.5"}, {"180", "-1"}};
    for (String[] pair : known) {
      assertThat(Cosine.of(new BigDecimal(pair[0])))
          .as(pair[0])
          .isEqualByComparingTo(new BigDecimal(pair[1]));
    }
    // the square root of 1/2 to 12 decimals
    assertThat(Cosine.of(new BigDecimal("45"))).isEqualByComparingTo("0.707106781187");
  }

  @Test
  void theCosineAgreesWithTheMachinesToTwelveDecimals() {
    Random random = new Random(7);
    for (int i = 0; i < 2_000; i++) {
      double degrees = random.nextInt(1_800_001) / 10_000.0;
      assertThat(Cosine.of(new BigDecimal(Double.toString(degrees))).doubleValue())
          .as("cos %s", degrees)
          .isCloseTo(
              StrictMath.cos(StrictMath.toRadians(degrees)),
              org.assertj.core.data.Offset.offset(5.1e-13));
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "0.5 mm|40 mm|0|lever 0.5 mm is no lever; measure from the drive to the middle of the handle",
        "350 mm|40 mm|181|adapter angle 181 is out of range; 0 (straight on) to 180 (folded back)",
        "350 mm|40 mm|-1|adapter angle -1 is out of range; 0 (straight on) to 180 (folded back)",
        "350 mm|350 mm|180|offset 350 mm folded back leaves nothing of lever 350 mm; the fastener"
            + " must lie before the handle",
      })
  void whatIsNoAdapterIsRefused(String lever, String offset, String angle, String message) {
    assertThatThrownBy(() -> adapter(lever, offset, angle))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage(message);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "350mm|\"350mm\" is not a length; write number, blank, unit, e.g. \"350 mm\"",
        "350 ft|unknown unit \"ft\"; allowed are mm cm m in",
        "-1 mm|length -1 mm is out of range; 0 to 10 m is allowed",
        "10.1 m|length 10.1 m is out of range; 0 to 10 m is allowed",
      })
  void whatIsNoLengthIsRefused(String text, String message) {
    assertThatThrownBy(() -> Length.parse(text)).hasMessage(message);
  }
}
