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
 * @param degrees degrees of freedom of the sigma
 * @param spread (U − L)/6σ; empty where a limit is missing
 * @param upper (U − x̄)/3σ; empty without U
 * @param lower (x̄ − L)/3σ; empty without L
 */
public record Index(
    int n, double degrees, OptionalDouble spread, OptionalDouble upper, OptionalDouble lower) {
  /** Of the intervals below. */
  public static final double CONFIDENCE = 0.95;

  /**
   * What a sigma from moving ranges is worth beside s of as many normal values: Cryer and Ryan,
   * Journal of Quality Technology 22 (1990).
   */
  static final double WORTH_OF_RANGES = 0.605;

  private static final double TAIL = (1 - CONFIDENCE) / 2;

  public Index {
    if (n < 2 || (upper.isEmpty() && lower.isEmpty())) {
      throw new IllegalArgumentException("an index needs 2 values and a limit");
    }
  }

  /**
   * With the overall standard deviation.
   *
   * @param sigma above 0
   */
  public static Index of(int n, double mean, double sigma, Limits limits) {
    return of(n, n - 1.0, mean, sigma, limits);
  }

  /** With the spread from one value to the next, {@link IndividualsChart#sigma}. */
  public static Index within(IndividualsChart chart, Limits limits) {
    int n = chart.values().size();
    return of(n, WORTH_OF_RANGES * (n - 1), chart.centre(), chart.sigma(), limits);
  }

  private static Index of(int n, double degrees, double mean, double sigma, Limits limits) {
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
        degrees,
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
   * Where the true {@link #nearest} lies, for a normal distribution, approximately: Ĉ ± z·√(1/(9n)
   * + Ĉ²/(2ν)) with ν degrees of freedom, n − 1 for s (NIST/SEMATECH e-Handbook 6.1.6).
   */
  public Interval nearestInterval() {
    double c = nearest();
    double z = new NormalDistribution(null, 0, 1).inverseCumulativeProbability(1 - TAIL);
    double half = z * Math.sqrt(1.0 / (9.0 * n) + c * c / (2 * degrees));
    return new Interval(c - half, c + half);
  }

  /**
   * Where the true {@link #spread} lies, for a normal distribution: from Ĉ·√(χ²(α/2, ν)/ν) to
   * Ĉ·√(χ²(1−α/2, ν)/ν).
   */
  public Optional<Interval> spreadInterval() {
    if (spread.isEmpty()) {
      return Optional.empty();
    }
    ChiSquaredDistribution chi = new ChiSquaredDistribution(null, degrees);
    double c = spread.getAsDouble();
    return Optional.of(
        new Interval(
            c * Math.sqrt(chi.inverseCumulativeProbability(TAIL) / degrees),
            c * Math.sqrt(chi.inverseCumulativeProbability(1 - TAIL) / degrees)));
  }
}
