package witnessmark.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SummaryTest {
  /**
   * The certified figures of NIST's Statistical Reference Datasets, univariate. NumAcc3 and NumAcc4
   * cannot come nearer from doubles: their values are not representable. A sum of squares gives
   * 0.107 on NumAcc3 and no number on NumAcc4.
   */
  @ParameterizedTest
  @CsvSource({
    "PiDigits, 5000, 4.53480000000000, 2.86733906028871, 1e-13",
    "Lottery, 218, 518.958715596330, 291.699727470969, 1e-13",
    "Lew, 200, -177.435000000000, 277.332168044316, 1e-13",
    "Mavro, 50, 2.00185600000000, 0.000429123454003053, 1e-12",
    "Michelso, 100, 299.852400000000, 0.0790105478190518, 1e-12",
    "NumAcc1, 3, 10000002, 1, 0",
    "NumAcc2, 1001, 1.2, 0.1, 1e-13",
    "NumAcc3, 1001, 1000000.2, 0.1, 1e-9",
    "NumAcc4, 1001, 10000000.2, 0.1, 1e-8"
  })
  void certifiedFiguresOfNist(String set, int n, double mean, double s, double relative) {
    Summary summary = Summary.of(CertifiedData.values(set));
    assertThat(summary.n()).isEqualTo(n);
    assertThat(summary.mean()).isCloseTo(mean, within(Math.abs(mean) * 1e-14));
    assertThat(summary.s()).isCloseTo(s, within(s * relative));
  }

  @Test
  void leastAndGreatest() {
    assertThat(Summary.of(List.of(3.0, 1.0, 2.0))).isEqualTo(new Summary(3, 2, 1, 1, 3));
  }

  @Test
  void oneValueHasNoSpread() {
    assertThat(Summary.of(List.of(45.1))).isEqualTo(new Summary(1, 45.1, 0, 45.1, 45.1));
  }

  @Test
  void noValueIsNoSummary() {
    assertThatThrownBy(() -> Summary.of(List.of()))
        .hasMessage("no value to sum up; at least 1 is needed");
    assertThatThrownBy(() -> Summary.of(List.of(1.0, Double.NaN)))
        .hasMessage("value 2 is NaN; finite numbers are needed");
  }
}
