package witnessmark.procedure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class BoltTest {
  private static final double SQUARE_INCH = 25.4 * 25.4;

  private static Bolt bolt(String thread, String propertyClass) {
    return Bolt.of(thread, propertyClass).orElseThrow();
  }

  /**
   * Stress areas of unified threads as printed on public thread pages (UNF on one, UNC on two);
   * some are printed truncated, so they hold to 0.2 %.
   */
  @ParameterizedTest
  @CsvSource({
    "1/4-20,0.0318", "1/4-28,0.0364", "5/16-18,0.0524", "5/16-24,0.0580",
    "3/8-16,0.0775", "3/8-24,0.0878", "7/16-14,0.1063", "7/16-20,0.1187",
    "1/2-13,0.1419", "1/2-20,0.1599", "5/8-11,0.226", "3/4-10,0.334"
  })
  void unifiedStressAreasAreThoseOfPublishedTables(String thread, double squareInches) {
    assertThat(bolt(thread, "grade 5").stressArea() / SQUARE_INCH)
        .isCloseTo(squareInches, Percentage.withPercentage(0.2));
  }

  /** Stress areas as printed in ISO 898-1 tables, to the digits printed. */
  @ParameterizedTest
  @CsvSource({
    "M6x1,20.1,0.05", "M8x1.25,36.6,0.05", "M10x1.5,58.0,0.05",
    "M12x1.75,84.3,0.05", "M16x2,157,0.5", "M20x2.5,245,0.5"
  })
  void metricStressAreasAreThoseOfPublishedTables(
      String thread, double squareMillimetres, double half) {
    assertThat(bolt(thread, "8.8").stressArea()).isCloseTo(squareMillimetres, within(half));
  }

  /**
   * Computed apart from this code, from printed, rounded stress areas that agree with minimum
   * tensile loads of an older EN ISO 898-1 table; the stresses under proof load (580, 830, 970 MPa)
   * are from memory.
   */
  @ParameterizedTest
  @CsvSource({
    "M6x1,11658,16683,19497",
    "M8x1.25,21228,30378,35502",
    "M10x1.5,33640,48140,56260",
    "M12x1.75,48894,69969,81771"
  })
  void metricProofLoadsFollowFromClass(
      String thread, double class88, double class109, double class129) {
    Percentage close = Percentage.withPercentage(0.2);
    assertThat(bolt(thread, "8.8").proofLoad()).isCloseTo(class88, close);
    assertThat(bolt(thread, "10.9").proofLoad()).isCloseTo(class109, close);
    assertThat(bolt(thread, "12.9").proofLoad()).isCloseTo(class129, close);
  }

  @Test
  void aThickBoltOfClass88HasTheHigherProofStress() {
    assertThat(bolt("M16x2", "8.8").proofStress()).isEqualTo(580);
    assertThat(bolt("M20x2.5", "8.8").proofStress()).isEqualTo(600);
  }

  /** Proof stresses of SAE J429, in ksi, as a university course page quotes them. */
  @ParameterizedTest
  @CsvSource({
    "1/2-13,grade 2,55",
    "1/2-13,grade 5,85",
    "1-8,grade 5,85",
    "1 1/8-7,grade 5,74",
    "1-1/8-12,Grade 8,120",
    "3/4-16 UNF,grade 8,120"
  })
  void unifiedProofStressesFollowFromGradeAndSize(String thread, String grade, double ksi) {
    assertThat(bolt(thread, grade).proofStress()).isCloseTo(ksi * 6.894757, within(0.01));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "M8", "M8x9", "M0x0.5", "M99x2", "8x1.25", "5/16", "0/0-18", "1/0-18", "1/16-18", "5/16-99",
        "7-8", "-18", "G1/4", ""
      })
  void otherThreadsAreNotKnown(String thread) {
    assertThat(Bolt.of(thread, thread.startsWith("M") ? "8.8" : "grade 5")).isEmpty();
  }

  @Test
  void aClassOfAnotherSystemIsNotKnown() {
    assertThat(Bolt.of("M8x1.25", "grade 5")).isEmpty();
    assertThat(Bolt.of("M8x1.25", "A2-70")).isEmpty();
    assertThat(Bolt.of("5/16-18", "8.8")).isEmpty();
    assertThat(Bolt.of("1-8", "grade 2")).isEmpty();
  }
}
