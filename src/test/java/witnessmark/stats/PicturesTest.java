package witnessmark.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What histograms and normal probability plots are drawn from. */
class PicturesTest {
  @Test
  void binsHaveRoundEdges() {
    Histogram histogram =
        Histogram.of(List.of(32.1, 32.4, 32.5, 32.9, 33.0, 33.2, 33.3, 33.9, 34.0));
    assertThat(histogram.start()).isEqualTo(32);
    assertThat(histogram.width()).isEqualTo(1);
    assertThat(histogram.counts()).containsExactly(4, 4, 1);
  }

  @Test
  void aValueOnAnEdgeIsInTheBinAbove() {
    // 0.3 is no whole number of 0.1 in doubles
    Histogram histogram = Histogram.of(List.of(0.0, 0.1, 0.2, 0.3, 0.4));
    assertThat(histogram.width()).isEqualTo(0.2);
    assertThat(histogram.counts()).containsExactly(2, 2, 1);
  }

  @Test
  void oneValueAndEqualValuesHaveABin() {
    assertThat(Histogram.of(List.of(33.0)).counts()).containsExactly(1);
    assertThat(Histogram.of(List.of(0.0, 0.0)).counts()).containsExactly(2);
  }

  @Test
  void noValueIsLost() {
    long seed = 7;
    Random random = new Random(seed);
    for (int i = 0; i < 2000; i++) {
      int n = 1 + random.nextInt(60);
      double scale = Math.pow(10, random.nextInt(6) - 3);
      List<Double> values =
          Stream.generate(() -> Math.round(random.nextGaussian() * 100) / 100.0 * scale)
              .limit(n)
              .toList();
      Histogram histogram = Histogram.of(values);
      assertThat(histogram.counts().stream().mapToInt(Integer::intValue).sum())
          .as("seed %d round %d", seed, i)
          .isEqualTo(n);
      assertThat(histogram.counts()).hasSizeLessThanOrEqualTo((int) Math.sqrt(n) + 3);
    }
  }

  /** Blom's scores of 5; computed by SciPy 1.17.1. */
  @Test
  void normalScores() {
    List<Double> scores = NormalScores.of(5);
    assertThat(scores.get(0)).isCloseTo(-1.17976112, within(5e-9));
    assertThat(scores.get(1)).isCloseTo(-0.49720057, within(5e-9));
    assertThat(scores.get(2)).isCloseTo(0, within(1e-12));
    assertThat(scores.get(4)).isCloseTo(1.17976112, within(5e-9));
  }
}
