package witnessmark.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CapabilityTest {
  private static final long SEED = 4;
  private static final Limits BAND = Limits.between(29.7, 36.3);

  /** Normal values of 33 ± 0.8, by a seed that gives a stable series. */
  private static List<Double> values(int n) {
    Random random = new Random(SEED);
    List<Double> values = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      values.add(Math.round((33 + 0.8 * random.nextGaussian()) * 100) / 100.0);
    }
    return values;
  }

  private static List<String> withheld(List<Double> values) {
    return ((Capability.Withheld) Analysis.of(values, BAND).capability()).because();
  }

  @Test
  void fortyStableValuesHaveIndicesAndACaution() {
    Analysis analysis = Analysis.of(values(40), BAND);
    Capability.Stated stated = (Capability.Stated) analysis.capability();
    double s = analysis.summary().s();
    assertThat(stated.overall().spread().getAsDouble()).isCloseTo(6.6 / (6 * s), within(1e-12));
    double sigma = analysis.chart().orElseThrow().meanRange() / 1.128;
    assertThat(stated.within().spread().getAsDouble()).isCloseTo(6.6 / (6 * sigma), within(1e-12));
    assertThat(analysis.cautions())
        .contains(
            "40 values are few: look at the intervals. About 50 are asked for, and 100 or more for"
                + " a study.");
  }

  @Test
  void withFewerThanThirtyNoneIsStated() {
    assertThat(withheld(values(29)))
        .containsExactly(
            "There are 29 values; with fewer than 30 an index says more about chance than about"
                + " the process.");
    assertThat(withheld(values(1)))
        .containsExactly(
            "There is 1 value; with fewer than 30 an index says more about chance than about the"
                + " process.");
    assertThat(Analysis.of(values(30), BAND).capability()).isInstanceOf(Capability.Stated.class);
  }

  @Test
  void ofAnUnstableProcessNoneIsStated() {
    List<Double> values = new ArrayList<>(values(100));
    for (int i = 50; i < 100; i++) {
      values.set(i, values.get(i) + 2);
    }
    assertThat(withheld(values))
        .singleElement()
        .satisfies(
            t ->
                assertThat(t)
                    .matches(
                        "The process was not stable: the run rules raise [0-9]+ alarms where a"
                            + " stable one gives about 1\\.1(, and a value lies [0-9.]+ sigma from"
                            + " the centre line)?\\. An index of several processes is"
                            + " that of none; find what changed at the points marked\\."));
  }

  @Test
  void oneValueFarOutIsEnough() {
    List<Double> values = new ArrayList<>(values(40));
    values.set(20, 41.0);
    assertThat(withheld(values))
        .singleElement()
        .satisfies(
            t ->
                assertThat(t)
                    .startsWith("The process was not stable: a value lies ")
                    .contains(" sigma from the centre line. "));
  }

  @Test
  void withoutSpreadNoneIsStated() {
    List<Double> same = java.util.Collections.nCopies(40, 33.0);
    assertThat(withheld(same))
        .containsExactly(
            "All values are the same: there is no spread to compare with the band. The reading may"
                + " be coarser than the process.");
  }

  @Test
  void whatIsNotNormalIsSaid() {
    Random random = new Random(SEED);
    List<Double> skew = new ArrayList<>();
    for (int i = 0; i < 60; i++) {
      skew.add(30 - 0.5 * Math.log(1 - random.nextDouble()));
    }
    assertThat(Analysis.of(skew, BAND).cautions())
        .anySatisfy(
            c ->
                assertThat(c)
                    .startsWith("The values do not look normal (Anderson-Darling, p 0.01): "));
  }

  @Test
  void coarseReadingsAreSaid() {
    List<Double> coarse = values(40).stream().map(v -> Math.rint(v / 2) * 2).toList();
    assertThat(Analysis.of(coarse, BAND).cautions())
        .contains(
            "The readings are in steps coarser than their spread: spread and run rules are rough.");
  }

  /**
   * The interval for Cpk from ranges, and that for Ppk from s, hold the true value as often as they
   * say.
   */
  @ParameterizedTest
  @ValueSource(ints = {30, 100})
  void intervalsHoldTheTrueValue(int n) {
    Random random = new Random(SEED);
    double truth = 1.375;
    int rounds = 4000;
    int within = 0;
    int overall = 0;
    for (int r = 0; r < rounds; r++) {
      List<Double> values = new ArrayList<>();
      for (int i = 0; i < n; i++) {
        values.add(33 + 0.8 * random.nextGaussian());
      }
      Summary summary = Summary.of(values);
      within += holds(Index.within(IndividualsChart.of(values), BAND), truth) ? 1 : 0;
      overall += holds(Index.of(n, summary.mean(), summary.s(), BAND), truth) ? 1 : 0;
    }
    assertThat((double) overall / rounds).as("seed %d", SEED).isBetween(0.94, 0.96);
    assertThat((double) within / rounds).as("seed %d", SEED).isBetween(0.93, 0.96);
  }

  private static boolean holds(Index index, double truth) {
    Interval interval = index.spreadInterval().orElseThrow();
    return interval.low() <= truth && truth <= interval.high();
  }
}
