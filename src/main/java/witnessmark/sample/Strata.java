package witnessmark.sample;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import witnessmark.entry.Entry;
import witnessmark.entry.Reason;
import witnessmark.torque.Band;
import witnessmark.torque.Torque;
import witnessmark.torque.TorqueUnit;
import witnessmark.torque.Verdict;

/** Readings laid apart by procedure, step, pass and band. */
final class Strata {
  private record Key(
      String procedure,
      String step,
      String pass,
      TorqueUnit unit,
      BigDecimal low,
      BigDecimal high) {
    static final Comparator<Key> ORDER =
        Comparator.comparing(Key::procedure)
            .thenComparing(Key::step)
            .thenComparing(Key::pass)
            .thenComparing(Key::unit)
            .thenComparing(Key::low)
            .thenComparing(Key::high);
  }

  private static final class Stratum {
    private final Band band;
    private final TreeSet<String> revisions = new TreeSet<>();
    private final List<Course.Fate> values = new ArrayList<>();
    private final Map<String, String> units = new TreeMap<>();
    private final Map<Verdict, Integer> verdicts = new EnumMap<>(Verdict.class);
    private final Map<Omission, Integer> omitted = new EnumMap<>(Omission.class);
    private int firsts;
    private int firstsAccepted;

    private Stratum(Band band) {
      this.band = band;
    }
  }

  private final String asked;
  private final Map<Key, Stratum> strata = new TreeMap<>(Key.ORDER);

  /**
   * @param asked what was asked for, in words
   */
  Strata(String asked) {
    this.asked = asked;
  }

  void add(Entry.JobOpened job, Course.Fate fate) {
    Pull pull = fate.pull();
    Band band =
        new Band(
            Torque.parse(pull.judged().low().orElseThrow()),
            Torque.parse(pull.judged().high().orElseThrow()));
    Key key =
        new Key(
            job.procedure(),
            pull.step(),
            pull.judged().pass().orElseThrow(),
            band.low().unit(),
            band.low().newtonMetres(),
            band.high().newtonMetres());
    Stratum stratum = strata.computeIfAbsent(key, k -> new Stratum(band));
    stratum.revisions.add(job.revision());
    stratum.units.put(job.job(), job.unit());
    if (pull.attempt()) {
      stratum.verdicts.merge(pull.judged().verdict().orElseThrow(), 1, Integer::sum);
    }
    if (fate.first()) {
      stratum.firsts++;
      stratum.firstsAccepted += pull.accepted() ? 1 : 0;
    }
    fate.omission()
        .ifPresentOrElse(
            o -> stratum.omitted.merge(o, 1, Integer::sum), () -> stratum.values.add(fate));
  }

  List<Study> studies() {
    List<Study> studies = new ArrayList<>();
    strata.forEach((key, stratum) -> studies.add(study(asked, key, stratum)));
    return studies;
  }

  private static Study study(String asked, Key key, Stratum stratum) {
    List<Pull> pulls =
        stratum.values.stream().map(Course.Fate::pull).sorted(Fact.IN_ORDER).toList();
    return new Study(
        asked,
        key.procedure(),
        stratum.revisions,
        key.step(),
        key.pass(),
        stratum.band,
        pulls.stream().map(p -> value(key, stratum, p)).toList(),
        new Tries(stratum.verdicts, stratum.firsts, stratum.firstsAccepted),
        stratum.omitted,
        (int) pulls.stream().filter(p -> p.torque().unit() != key.unit()).count(),
        (int) pulls.stream().filter(p -> p.judged().reason() == Reason.COUNTED_IN_GROUP).count());
  }

  private static Value value(Key key, Stratum stratum, Pull pull) {
    String job = pull.job().orElseThrow();
    return new Value(
        pull.entry(),
        pull.moment(),
        job,
        stratum.units.get(job),
        pull.fastener(),
        pull.wrench(),
        pull.operator(),
        Conversion.to(key.unit(), pull.torque()).doubleValue(),
        pull.torque().toString());
  }
}
