package witnessmark.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class IndividualsChartTest {
  /** NIST/SEMATECH e-Handbook 6.3.2.2, flow rate; quoted by public texts. */
  private static final List<Double> FLOW =
      List.of(49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1);

  @Test
  void theHandbooksFlowRate() {
    IndividualsChart chart = IndividualsChart.of(FLOW);
    assertThat(chart.centre()).isCloseTo(50.81, within(1e-9));
    assertThat(chart.meanRange()).isCloseTo(1.8778, within(0.00005));
    assertThat(chart.upper()).isCloseTo(55.8041, within(0.00005));
    assertThat(chart.lower()).isCloseTo(45.8159, within(0.00005));
    // computed in R: 3.267 times the mean range
    assertThat(chart.rangeUpper()).isCloseTo(6.134700, within(5e-7));
    assertThat(chart.signals()).isEmpty();
    assertThat(chart.wideRanges()).isEmpty();
  }

  /** Mean moving ranges of NIST's reference data, computed in exact fractions. */
  @Test
  void meanMovingRangesOfReferenceData() {
    assertThat(meanRange("Mavro")).isCloseTo(0.000106122449, within(1e-12));
    assertThat(meanRange("Michelso")).isCloseTo(0.0525252525, within(1e-10));
    assertThat(meanRange("NumAcc2")).isCloseTo(0.1999, within(2e-5));
  }

  private static double meanRange(String set) {
    return IndividualsChart.of(CertifiedData.values(set)).meanRange();
  }

  /** The printed constants beside the exact ones: 2/sqrt(pi), and 1 + 3 d3/d2. */
  @Test
  void constantsAreThePrintedOnes() {
    double d2 = 2 / Math.sqrt(Math.PI);
    double d3 = Math.sqrt(2 - d2 * d2);
    assertThat(d2).isCloseTo(1.128379, within(5e-7));
    assertThat(d3).isCloseTo(0.852502, within(5e-7));
    assertThat(IndividualsChart.D2).isCloseTo(d2, within(0.0005));
    assertThat(IndividualsChart.D4).isCloseTo(1 + 3 * d3 / d2, within(0.0005));
    // E2 = 3/d2, printed as 2.660
    assertThat(3 / IndividualsChart.D2).isCloseTo(2.660, within(0.0005));
  }

  @Test
  void aWideRangeIsTold() {
    IndividualsChart chart =
        IndividualsChart.of(List.of(10.0, 10.1, 10.0, 10.1, 10.0, 10.1, 10.9, 10.8, 10.9, 10.8));
    assertThat(chart.wideRanges()).containsExactly(6);
  }

  @Test
  void withoutSpreadNothingSignals() {
    IndividualsChart chart =
        IndividualsChart.of(List.of(5.0, 5.0, 5.0, 5.0, 5.0, 5.0, 5.0, 5.0, 5.0));
    assertThat(chart.sigma()).isZero();
    assertThat(chart.signals()).isEmpty();
  }

  @Test
  void oneValueMakesNoChart() {
    assertThatThrownBy(() -> IndividualsChart.of(List.of(5.0)))
        .hasMessage("1 value makes no moving range; at least 2 are needed");
  }
}
