package witnessmark.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class IndexTest {
  /** NIST/SEMATECH e-Handbook 6.1.6: U = 20, L = 8, mean 16, s 2; quoted by public texts. */
  @Test
  void theHandbooksExample() {
    Index index = Index.of(50, 16, 2, Limits.between(8, 20));
    assertThat(index.spread()).hasValue(1.0);
    assertThat(index.upper().getAsDouble()).isCloseTo(0.6667, within(0.00005));
    assertThat(index.lower().getAsDouble()).isCloseTo(1.3333, within(0.00005));
    assertThat(index.nearest()).isCloseTo(0.6667, within(0.00005));
  }

  /** The same example's 95 % intervals, computed in R from the handbook's formulas. */
  @ParameterizedTest
  @CsvSource({"30, 0.4577, 0.8756", "50, 0.5056, 0.8278", "100, 0.5531, 0.7802"})
  void intervalOfTheNearerSide(int n, double low, double high) {
    Interval interval = Index.of(n, 16, 2, Limits.between(8, 20)).nearestInterval();
    assertThat(interval.low()).isCloseTo(low, within(0.00005));
    assertThat(interval.high()).isCloseTo(high, within(0.00005));
  }

  /** Computed in R: qchisq. */
  @Test
  void intervalOfTheSpread() {
    Interval interval = Index.of(50, 16, 2, Limits.between(8, 20)).spreadInterval().orElseThrow();
    assertThat(interval.low()).isCloseTo(0.802482, within(5e-7));
    assertThat(interval.high()).isCloseTo(1.197126, within(5e-7));
  }

  /**
   * Montgomery's piston rings, 25 samples of 5: mean 74.001176, mean range 0.02276, d2 = 2.326.
   * Printed in the article of R's package qcc, to the digits here.
   */
  @ParameterizedTest
  @CsvSource({
    "73.95, 74.05, 1.703, 1.663, 1.448, 1.878",
    "73.99, 74.01, 0.341, 0.301, 0.231, 0.370",
    "73.99, 74.10, 1.874, 0.381, 0.305, 0.456"
  })
  void pistonRings(
      double lower, double upper, double cp, double cpk, double cpkLow, double cpkHigh) {
    Index index = Index.of(125, 74.001176, 0.02276 / 2.326, Limits.between(lower, upper));
    assertThat(index.spread().getAsDouble()).isCloseTo(cp, within(0.0005));
    assertThat(index.nearest()).isCloseTo(cpk, within(0.0005));
    assertThat(index.nearestInterval().low()).isCloseTo(cpkLow, within(0.0005));
    assertThat(index.nearestInterval().high()).isCloseTo(cpkHigh, within(0.0005));
  }

  /** From the same article: Cpl 1.743, Cpu 1.663, the interval of Cp 1.491 to 1.915. */
  @Test
  void pistonRingsSideBySide() {
    Index index = Index.of(125, 74.001176, 0.02276 / 2.326, Limits.between(73.95, 74.05));
    assertThat(index.lower().getAsDouble()).isCloseTo(1.743, within(0.0005));
    assertThat(index.upper().getAsDouble()).isCloseTo(1.663, within(0.0005));
    Interval interval = index.spreadInterval().orElseThrow();
    assertThat(interval.low()).isCloseTo(1.491, within(0.0005));
    assertThat(interval.high()).isCloseTo(1.915, within(0.0005));
  }

  /** The same with the overall s of the 125 diameters; computed in R. */
  @Test
  void pistonRingsOverall() {
    Index index = Index.of(125, 74.001176, 0.010069968, Limits.between(73.95, 74.05));
    assertThat(index.spread().getAsDouble()).isCloseTo(1.655086, within(5e-6));
    assertThat(index.nearest()).isCloseTo(1.616159, within(5e-6));
  }

  @Test
  void oneLimitGivesOneSide() {
    Index index = Index.of(40, 16, 2, Limits.atMost(20));
    assertThat(index.spread()).isEqualTo(OptionalDouble.empty());
    assertThat(index.spreadInterval()).isEmpty();
    assertThat(index.lower()).isEqualTo(OptionalDouble.empty());
    assertThat(index.nearest()).isEqualTo(index.upper().getAsDouble());
  }

  @Test
  void withoutSpreadThereIsNone() {
    assertThatThrownBy(() -> Index.of(40, 16, 0, Limits.atMost(20)))
        .hasMessage("sigma is 0.0; an index needs some spread");
  }
}
