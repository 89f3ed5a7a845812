package witnessmark.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

class AndersonDarlingTest {
  /**
   * Weights of twenty chicks in grams: D'Agostino and Stephens, Goodness-of-Fit Techniques (1986),
   * data on page 546, adjusted statistic 0.223 on page 125; quoted by two public test suites, one
   * of which also gives 0.214 and the probability 0.826.
   */
  @Test
  void theBooksChicks() {
    AndersonDarling test =
        of(
            156, 162, 168, 182, 186, 190, 190, 196, 202, 210, 214, 220, 226, 230, 230, 236, 236,
            242, 246, 270);
    assertThat(test.statistic()).isCloseTo(0.214, within(0.0005));
    assertThat(test.adjusted()).isCloseTo(0.223, within(0.0005));
    assertThat(test.probability()).isCloseTo(0.826, within(0.0005));
  }

  private static AndersonDarling of(double... values) {
    return AndersonDarling.of(DoubleStream.of(values).boxed().toList());
  }

  @Test
  void fewOrEqualValuesAreNotTested() {
    assertThatThrownBy(() -> of(1, 2, 3, 4, 5, 6, 7))
        .hasMessageStartingWith("7 values with s 2.16");
    assertThatThrownBy(() -> AndersonDarling.of(List.of(1., 1., 1., 1., 1., 1., 1., 1.)))
        .hasMessage("8 values with s 0.0; 8 with some spread are needed");
  }
}
