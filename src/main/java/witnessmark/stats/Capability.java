package witnessmark.stats;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** How a process lies in its band, or why that is not said. */
public sealed interface Capability {
  /** With fewer values no index is stated: common practice. */
  int LEAST = 30;

  /** With fewer a caution is: about 50 independent values, NIST/SEMATECH e-Handbook 6.1.6. */
  int ENOUGH = 50;

  /** What a study of capability should have: the same. */
  int STUDY = 100;

  /**
   * The indices.
   *
   * @param within with the spread from one value to the next: Cp and Cpk
   * @param overall with the standard deviation of all values: Pp and Ppk
   */
  record Stated(Index within, Index overall) implements Capability {}

  /**
   * None is stated.
   *
   * @param because in sentences
   */
  record Withheld(List<String> because) implements Capability {
    public Withheld {
      because = List.copyOf(because);
      if (because.isEmpty()) {
        throw new IllegalArgumentException("what is withheld has a reason");
      }
    }
  }

  /** What the values allow to say. */
  static Capability of(
      Summary summary,
      Optional<IndividualsChart> chart,
      Optional<Stability> stability,
      Limits limits) {
    List<String> because = new ArrayList<>();
    if (summary.n() < LEAST) {
      because.add(
          (summary.n() == 1 ? "There is 1 value" : "There are " + summary.n() + " values")
              + "; with fewer than "
              + LEAST
              + " an index says more about chance than about the process.");
    }
    if (summary.n() > 1 && summary.s() == 0) {
      because.add(
          "All values are the same: there is no spread to compare with the band. The reading may be"
              + " coarser than the process.");
    }
    stability.filter(s -> !s.stable()).ifPresent(s -> because.add(unstable(s)));
    if (!because.isEmpty()) {
      return new Withheld(because);
    }
    return new Stated(
        Index.within(chart.orElseThrow(), limits),
        Index.of(summary.n(), summary.mean(), summary.s(), limits));
  }

  private static String unstable(Stability s) {
    List<String> signs = new ArrayList<>();
    if (s.manyAlarms()) {
      signs.add(
          String.format(
              Locale.ROOT,
              "the run rules raise %d alarms where a stable one gives about %.1f",
              s.alarms(),
              s.expected()));
    }
    if (s.farOut()) {
      signs.add(
          String.format(Locale.ROOT, "a value lies %.1f sigma from the centre line", s.farthest()));
    }
    return "The process was not stable: "
        + String.join(", and ", signs)
        + ". An index of several processes is that of none; find what changed at the points marked.";
  }
}
