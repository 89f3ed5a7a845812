package witnessmark.cli.answer;

import static witnessmark.cli.answer.Json.object;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import witnessmark.entry.Moments;
import witnessmark.report.StudyNotes;
import witnessmark.sample.Gathered;
import witnessmark.sample.Omission;
import witnessmark.sample.Study;
import witnessmark.sample.Tries;
import witnessmark.sample.Value;
import witnessmark.stats.Analysis;
import witnessmark.stats.Capability;
import witnessmark.stats.Index;
import witnessmark.stats.IndividualsChart;
import witnessmark.stats.Interval;
import witnessmark.stats.RunRule;
import witnessmark.stats.Share;
import witnessmark.stats.Stability;

/** Studies for programs; numbers are in the study's unit, as reckoned, without rounding. */
public final class CapabilityJson {
  private CapabilityJson() {}

  public static Map<String, Object> of(Gathered gathered) {
    return object(
        "studies",
        gathered.studies().stream().map(CapabilityJson::study).toList(),
        "beside",
        omitted(gathered.beside()),
        "cautions",
        StudyNotes.ALWAYS);
  }

  private static Map<String, Object> study(Study study) {
    Map<String, Object> object =
        object(
            "asked",
            study.asked(),
            "procedure",
            study.procedure(),
            "revisions",
            study.revisions(),
            "step",
            study.step(),
            "pass",
            study.pass(),
            "unit",
            study.unit().symbol(),
            "low",
            study.band().low().toString(),
            "high",
            study.band().high().toString(),
            "tries",
            tries(study.tries()),
            "omitted",
            omitted(study.omitted()));
    if (!study.values().isEmpty()) {
      Analysis analysis = study.analysis();
      figures(object, analysis);
      object.put("cautions", StudyNotes.cautions(study, analysis));
      object.put("values", values(study, analysis.chart()));
    }
    return object;
  }

  private static void figures(Map<String, Object> object, Analysis analysis) {
    object.put("n", analysis.summary().n());
    object.put("mean", analysis.summary().mean());
    if (analysis.summary().n() > 1) {
      object.put("s", analysis.summary().s());
    }
    analysis.chart().ifPresent(c -> object.put("chart", chart(c)));
    analysis.stability().ifPresent(s -> object.put("stability", stability(s)));
    analysis
        .normality()
        .ifPresent(
            a ->
                object.put(
                    "normality",
                    object("andersonDarling", a.adjusted(), "probability", a.probability())));
    if (analysis.capability() instanceof Capability.Stated stated) {
      object.put("within", index("cp", "cpk", stated.within()));
      object.put("overall", index("pp", "ppk", stated.overall()));
    } else if (analysis.capability() instanceof Capability.Withheld withheld) {
      object.put("withheld", withheld.because());
    }
  }

  private static Map<String, Object> chart(IndividualsChart c) {
    return object(
        "meanRange",
        c.meanRange(),
        "sigma",
        c.sigma(),
        "lower",
        c.lower(),
        "upper",
        c.upper(),
        "rangeUpper",
        c.rangeUpper());
  }

  private static Map<String, Object> stability(Stability s) {
    return object(
        "stable",
        s.stable(),
        "alarms",
        s.alarms(),
        "expected",
        s.expected(),
        "farthestSigma",
        s.farthest());
  }

  private static Map<String, Object> index(String both, String nearer, Index index) {
    OptionalDouble spread = index.spread();
    return object(
        both,
        spread.isPresent() ? spread.getAsDouble() : null,
        both + "Interval",
        index.spreadInterval().map(CapabilityJson::interval).orElse(null),
        nearer,
        index.nearest(),
        nearer + "Interval",
        interval(index.nearestInterval()));
  }

  private static List<Double> interval(Interval interval) {
    return List.of(interval.low(), interval.high());
  }

  private static Map<String, Object> tries(Tries tries) {
    Map<String, Integer> verdicts = new LinkedHashMap<>();
    tries.verdicts().forEach((v, n) -> verdicts.put(v.code(), n));
    return object(
        "all",
        tries.all(),
        "verdicts",
        verdicts,
        "firstTry",
        tries.firstPass().map(CapabilityJson::share).orElse(null));
  }

  private static Map<String, Object> share(Share share) {
    return object("count", share.count(), "of", share.of(), "interval", interval(share.interval()));
  }

  private static Map<String, Integer> omitted(Map<Omission, Integer> omitted) {
    Map<String, Integer> object = new LinkedHashMap<>();
    omitted.forEach((o, n) -> object.put(o.code(), n));
    return object;
  }

  private static List<Map<String, Object>> values(Study study, Optional<IndividualsChart> chart) {
    Map<Integer, List<Integer>> rules = new LinkedHashMap<>();
    chart.ifPresent(
        c ->
            c.signals()
                .forEach(
                    s -> rules.put(s.index(), s.rules().stream().map(RunRule::number).toList())));
    List<Map<String, Object>> values = new ArrayList<>();
    for (int i = 0; i < study.values().size(); i++) {
      Value v = study.values().get(i);
      values.add(
          object(
              "entry",
              v.entry(),
              "moment",
              Moments.text(v.moment()),
              "job",
              v.job(),
              "unit",
              v.unit(),
              "fastener",
              v.fastener(),
              "wrench",
              v.wrench(),
              "operator",
              v.operator().orElse(null),
              "torque",
              v.reading(),
              "rules",
              rules.get(i)));
    }
    return values;
  }
}
