package witnessmark.stats;

import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * How a spread and a mean lie in a band, without unit.
 *
 * <p>With σ: (U − L)/6σ, (U − x̄)/3σ, (x̄ − L)/3σ and the smaller of the two (NIST/SEMATECH
 * e-Handbook 6.1.6). With the spread from one value to the next these are Cp, Cpu, Cpl and Cpk;
 * with the overall standard deviation s, Pp, Ppu, Ppl and Ppk (the names of AIAG's SPC manual).
 *
 * @param n how many values it comes from
 * @param spread (U − L)/6σ; empty where a limit is missing
 * @param upper (U − x̄)/3σ; empty without U
 * @param lower (x̄ − L)/3σ; empty without L
 */
public record Index(int n, OptionalDouble spread, OptionalDouble upper, OptionalDouble lower) {
  /** Of the intervals below. */
  public static final double CONFIDENCE = 0.95;

  private static final double TAIL = (1 - CONFIDENCE) / 2;

  public Index {
    if (n < 2 || (upper.isEmpty() && lower.isEmpty())) {
      throw new IllegalArgumentException("an index needs 2 values and a limit");
    }
  }

  /**
   * @param sigma above 0
   */
  public static Index of(int n, double mean, double sigma, Limits limits) {
    if (!(sigma > 0)) {
      throw new IllegalArgumentException("sigma is " + sigma + "; an index needs some spread");
    }
    OptionalDouble spread =
        limits.both()
            ? OptionalDouble.of(
                (limits.upper().getAsDouble() - limits.lower().getAsDouble()) / (6 * sigma))
            : OptionalDouble.empty();
    return new Index(
        n,
        spread,
        limits.upper().isPresent()
            ? OptionalDouble.of((limits.upper().getAsDouble() - mean) / (3 * sigma))
            : OptionalDouble.empty(),
        limits.lower().isPresent()
            ? OptionalDouble.of((mean - limits.lower().getAsDouble()) / (3 * sigma))
            : OptionalDouble.empty());
  }

  /** The smaller of the two sides: Cpk or Ppk. */
  public double nearest() {
    return Math.min(upper.orElse(Double.POSITIVE_INFINITY), lower.orElse(Double.POSITIVE_INFINITY));
  }

  /**
   * Where the true {@link #nearest} lies, for a normal distribution: Ĉ ± z·√(1/(9n) + Ĉ²/(2(n−1)))
   * (NIST/SEMATECH e-Handbook 6.1.6), approximately.
   */
  public Interval nearestInterval() {
    double c = nearest();
    double z = new NormalDistribution(null, 0, 1).inverseCumulativeProbability(1 - TAIL);
    double half = z * Math.sqrt(1.0 / (9.0 * n) + c * c / (2.0 * (n - 1)));
    return new Interval(c - half, c + half);
  }

  /**
   * Where the true {@link #spread} lies, for a normal distribution: from Ĉ·√(χ²(α/2, n−1)/(n−1)) to
   * Ĉ·√(χ²(1−α/2, n−1)/(n−1)).
   */
  public Optional<Interval> spreadInterval() {
    if (spread.isEmpty()) {
      return Optional.empty();
    }
    ChiSquaredDistribution chi = new ChiSquaredDistribution(null, n - 1);
    double c = spread.getAsDouble();
    return Optional.of(
        new Interval(
            c * Math.sqrt(chi.inverseCumulativeProbability(TAIL) / (n - 1)),
            c * Math.sqrt(chi.inverseCumulativeProbability(1 - TAIL) / (n - 1))));
  }
}
