package witnessmark.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import witnessmark.sample.Omission;
import witnessmark.sample.Study;
import witnessmark.stats.Analysis;
import witnessmark.stats.Signal;
import witnessmark.torque.Verdict;

/** What a reader of a study is told beside its figures, in sentences. */
public final class StudyNotes {
  /** What the figures never say. */
  public static final List<String> ALWAYS =
      List.of(
          "Torque is not clamp load: the figures say how evenly torque was applied, and nothing of"
              + " the preload. They do not make a joint safe, and never say what torque to use.",
          "The spread is that of fasteners, hands and wrench together.");

  private StudyNotes() {}

  /** How many readings were left out, and why. */
  public static List<String> omissions(Map<Omission, Integer> omitted) {
    return omitted.entrySet().stream().map(e -> e.getKey().text(e.getValue())).toList();
  }

  /** What to know of these values. */
  public static List<String> cautions(Study study, Analysis analysis) {
    List<String> cautions = new ArrayList<>(analysis.cautions());
    if (study.tries().all() > study.tries().verdicts().getOrDefault(Verdict.IN_BAND, 0)) {
      cautions.add(
          "The values are accepted readings, so none lies outside the band: what was tightened"
              + " again, or disposed of, tells in the shares of all tries only.");
    }
    if (study.counted() > 0) {
      cautions.add(
          study.counted()
              + (study.counted() == 1 ? " value was" : " values were")
              + " credited by count: which fastener of the group it was is not known.");
    }
    if (study.converted() > 0) {
      cautions.add(
          study.converted()
              + (study.converted() == 1 ? " value was" : " values were")
              + " sent in another unit and converted exactly into "
              + study.unit()
              + ".");
    }
    return cautions;
  }

  /** A signal's rules, e.g. {@code rules 1, 2}. */
  public static String rules(Signal signal) {
    return (signal.rules().size() == 1 ? "rule " : "rules ")
        + String.join(", ", signal.rules().stream().map(r -> "" + r.number()).toList());
  }
}
