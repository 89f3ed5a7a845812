package witnessmark.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ShareTest {
  /** Clopper and Pearson's interval; computed by SciPy 1.17.1: binomtest, exact. */
  @ParameterizedTest
  @CsvSource({
    "3, 40, 0.0157421799, 0.2038647387",
    "0, 40, 0, 0.0880973029",
    "40, 40, 0.9119026971, 1"
  })
  void interval(int count, int of, double low, double high) {
    Interval interval = new Share(count, of).interval();
    assertThat(interval.low()).isCloseTo(low, within(1e-7));
    assertThat(interval.high()).isCloseTo(high, within(1e-7));
  }

  @Test
  void aShareIsOfSomething() {
    assertThat(new Share(3, 4).value()).isEqualTo(0.75);
    assertThatThrownBy(() -> new Share(0, 0)).hasMessage("0 of 0 is no share");
    assertThatThrownBy(() -> new Share(5, 4)).hasMessage("5 of 4 is no share");
  }
}
