package witnessmark.stats;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.distribution.NormalDistribution;

/** Where ordered values would lie if they were normal. */
public final class NormalScores {
  private NormalScores() {}

  /** The n scores in ascending order: Φ⁻¹((i − 3/8)/(n + 1/4)), Blom (1958). */
  public static List<Double> of(int n) {
    NormalDistribution normal = new NormalDistribution(null, 0, 1);
    List<Double> scores = new ArrayList<>();
    for (int i = 1; i <= n; i++) {
      scores.add(normal.inverseCumulativeProbability((i - 0.375) / (n + 0.25)));
    }
    return scores;
  }
}
