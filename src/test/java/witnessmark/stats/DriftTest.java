package witnessmark.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Expected figures computed by SciPy 1.17.1: linregress, and the prediction interval by hand. */
class DriftTest {
  private static final List<Double> RISING =
      List.of(0.2, 0.5, 0.1, 0.6, 0.9, 0.7, 1.2, 1.0, 1.4, 1.3, 1.8, 1.6);

  @Test
  void aDriftIsForetold() {
    Drift.Seen drift = (Drift.Seen) Drift.of(RISING, 3);
    assertThat(drift.slope()).isCloseTo(0.140909, within(5e-7));
    assertThat(drift.interval().low()).isCloseTo(0.105076, within(5e-7));
    assertThat(drift.interval().high()).isCloseTo(0.176742, within(5e-7));
    assertThat(drift.line()).hasValue(10);
    assertThat(drift.earliest()).hasValue(5);
    assertThat(drift.sentence("%"))
        .isEqualTo(
            "It drifts by +0.141 % a check, 95 % +0.105 to +0.177. If that goes on, it reaches"
                + " +3 % in about 10 checks; a single check may be beyond it in 5 checks.");
  }

  @Test
  void itIsNotForetoldFartherThanItWasWatched() {
    Drift.Seen drift = (Drift.Seen) Drift.of(RISING, 4);
    // the line reaches it after 17, more than the 12 on record
    assertThat(drift.line()).isEqualTo(OptionalInt.empty());
    assertThat(drift.earliest()).hasValue(11);
    assertThat(drift.sentence("%"))
        .endsWith(
            " it does not reach +4 % in the next 12 checks; a single check may be beyond it in 11"
                + " checks.");
  }

  @Test
  void aFallIsToTheLowerLimit() {
    Drift.Seen drift = (Drift.Seen) Drift.of(RISING.stream().map(v -> -v).toList(), 2);
    assertThat(drift.limit()).isEqualTo(-2);
    assertThat(drift.line()).hasValue(3);
    assertThat(drift.earliest()).hasValue(1);
    assertThat(drift.sentence("%"))
        .contains("reaches -2 % in about 3 checks; a single check may be beyond it in 1 check.");
  }

  @Test
  void aLimitThatIsReachedIsSaid() {
    assertThat(Drift.of(RISING, 1.5).sentence("%")).endsWith(" It has reached +1.5 %.");
  }

  @Test
  void scatterIsNoDrift() {
    Drift.NotSeen none =
        (Drift.NotSeen) Drift.of(List.of(0.2, -0.1, 0.3, 0.1, -0.2, 0.15, 0.05, 0.0), 4);
    assertThat(none.slope()).isCloseTo(-0.0166667, within(5e-7));
    assertThat(none.interval().low()).isCloseTo(-0.0806088, within(5e-7));
    assertThat(none.interval().high()).isCloseTo(0.0472755, within(5e-7));
    assertThat(none.sentence("%"))
        .isEqualTo("No drift is seen: -0.017 % a check, 95 % -0.081 to +0.047.");
  }

  @Test
  void fewOrEqualChecksShowNone() {
    assertThat(Drift.of(List.of(1.0), 4).sentence("%"))
        .isEqualTo("1 check: too few to tell a drift; 6 are needed.");
    assertThat(Drift.of(IntStream.range(0, 9).mapToObj(i -> 1.0).toList(), 4))
        .isInstanceOf(Drift.NotSeen.class);
    assertThatThrownBy(() -> Drift.of(RISING, 0))
        .hasMessage("limit 0.0 is none; above 0 is allowed");
  }
}
