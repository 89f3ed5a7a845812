package witnessmark.report;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import witnessmark.entry.Entry;
import witnessmark.entry.Moments;
import witnessmark.entry.Objection;
import witnessmark.entry.Word;
import witnessmark.procedure.Step;
import witnessmark.record.Attempt;
import witnessmark.record.ByWhom;
import witnessmark.record.Deviation;
import witnessmark.record.GateRecord;
import witnessmark.record.JobRecord;
import witnessmark.record.Numbered;
import witnessmark.record.OutOfTolerance;
import witnessmark.record.PassRecord;
import witnessmark.record.Person;
import witnessmark.record.UnitRecord;
import witnessmark.record.Unplaced;
import witnessmark.torque.Angle;
import witnessmark.torque.Verdict;
import witnessmark.wrench.Wrench;

/** A unit's record as plain maps and lists for programs; what does not apply is absent. */
public final class RecordJson {
  private RecordJson() {}

  public static Map<String, Object> of(UnitRecord unit) {
    return object("unit", unit.unit(), "jobs", unit.jobs().stream().map(RecordJson::job).toList());
  }

  private static Map<String, Object> job(JobRecord job) {
    return object(
        "job", job.job(),
        "outcome", job.outcome().code(),
        "procedure", job.procedure().id(),
        "revision", job.procedure().revision(),
        "title", job.procedure().title(),
        "released", job.released().entry(),
        "entries", job.count(),
        "whole", job.whole(),
        "standing", job.standing(),
        "total", job.passes().size(),
        "life", job.life().stream().map(RecordJson::life).toList(),
        "passes", job.passes().stream().map(RecordJson::pass).toList(),
        "others", readings(job.others()),
        "unplaced", job.unplaced().stream().map(RecordJson::unplaced).toList(),
        "nonconformities", job.deviations().stream().map(RecordJson::deviation).toList(),
        "gates", job.gates().stream().map(RecordJson::gate).toList(),
        "corrections", job.corrections().stream().map(RecordJson::correction).toList(),
        "wrenches", job.wrenches().stream().map(RecordJson::wrench).toList(),
        "unknownWrenches", job.unknownWrenches(),
        "people", job.people().stream().map(RecordJson::person).toList(),
        "foundOutOfTolerance", job.foundLater().stream().map(RecordJson::outOfTolerance).toList(),
        "late", readings(job.late()),
        "readings", job.readings().size(),
        "withoutBadge", job.readings().stream().filter(a -> a.operator().isEmpty()).count(),
        "missing", job.missing());
  }

  private static Map<String, Object> life(Numbered n) {
    return object(
        "entry", n.n(),
        "at", Moments.text(n.entry().at()),
        "by", ByWhom.of(n.entry()),
        "text", Phrases.life(n.entry()));
  }

  private static Map<String, Object> pass(PassRecord p) {
    return object(
        "fastener", p.fastener(),
        "step", p.step().title(),
        "criticality", p.step().criticality().code(),
        "pass", p.pass().name(),
        "target", p.pass().target().map(Object::toString),
        "low", p.pass().band().low().toString(),
        "high", p.pass().band().high().toString(),
        "angleLow", p.pass().angle().map(a -> a.low().toString()),
        "angleHigh", p.pass().angle().map(a -> a.high().toString()),
        "state", p.state().code(),
        "by", p.by(),
        "attempts", p.attempts().stream().map(a -> reading(a, p)).toList());
  }

  private static Map<String, Object> outOfTolerance(OutOfTolerance f) {
    return object(
        "wrench", f.wrench(),
        "entry", f.entry(),
        "told", f.told(),
        "readings", f.readings(),
        "standing", f.standing(),
        "text", Remarks.caution(f));
  }

  private static List<Map<String, Object>> readings(List<Attempt> attempts) {
    return attempts.stream().map(RecordJson::reading).toList();
  }

  private static Map<String, Object> reading(Attempt a) {
    return object(
        "entry", a.entry(),
        "decidedBy", a.decidedBy(),
        "fastener", a.judged().fastener(),
        "byCount", a.byCount(),
        "pass", a.judged().pass(),
        "torque", a.taken().event().torque().toString(),
        "angle", a.taken().event().angle().map(Angle::toString),
        "direction", a.taken().event().direction().code(),
        "atFastener", a.judged().atFastener(),
        "angleTotal", a.judged().angleTotal().map(Angle::toString),
        "verdict", a.judged().verdict().map(Verdict::code),
        "rule", a.judged().rule().map(Word::code),
        "guard", a.judged().guard(),
        "objections", a.judged().objections().stream().map(Objection::code).toList(),
        "effect", a.judged().effect().code(),
        "reason", a.judged().reason().code(),
        "stands", a.stands(),
        "undone", a.undone(),
        "wrench", a.taken().event().wrench(),
        "calibration", a.wrench().map(RecordJson::wrench),
        "operator", a.operator(),
        "moment", Moments.text(a.taken().moment()),
        "clock", a.clock());
  }

  private static Map<String, Object> reading(Attempt a, PassRecord p) {
    Map<String, Object> reading = reading(a);
    Remarks.converted(a, p.pass().band()).ifPresent(t -> reading.put("inBandsUnit", t));
    return reading;
  }

  private static Map<String, Object> unplaced(Unplaced u) {
    Map<String, Object> reading = reading(u.attempt());
    reading.put("asks", u.asks());
    u.setAside().ifPresent(n -> reading.put("setAside", correction(n)));
    return reading;
  }

  private static Map<String, Object> deviation(Deviation d) {
    return object(
        "fastener", d.fastener(),
        "open", d.open(),
        "reading", reading(d.attempt()),
        "decisions",
            d.decisions().stream()
                .map(
                    x ->
                        object(
                            "entry", x.entry(),
                            "at", Moments.text(x.disposed().at()),
                            "disposition", x.disposed().disposition().code(),
                            "by", x.disposed().by(),
                            "role", x.disposed().role().map(Word::code),
                            "concession", x.disposed().concession(),
                            "because", x.disposed().because(),
                            "key", x.signature().key(),
                            "signature", x.signature().kind().code()))
                .toList());
  }

  private static Map<String, Object> gate(GateRecord g) {
    return object(
        "step", g.step().id(),
        "title", g.step().title(),
        "asked", Phrases.gate(g.step()),
        "by", g.by(),
        "done", g.done().stream().map(n -> done(g.step(), n)).toList());
  }

  private static Map<String, Object> done(Step step, Numbered n) {
    return object(
        "entry", n.n(),
        "at", Moments.text(n.entry().at()),
        "by", ByWhom.of(n.entry()),
        "values",
            n.entry() instanceof Entry.Measured m
                ? Optional.of(m.values().stream().map(Object::toString).toList())
                : Optional.empty(),
        "text", Phrases.done(step, n.entry()));
  }

  private static Map<String, Object> correction(Numbered n) {
    return object(
        "entry", n.n(),
        "at", Moments.text(n.entry().at()),
        "kind", Kinds.of(n.entry()),
        "by", ByWhom.of(n.entry()),
        "text", Phrases.correction(n.entry()));
  }

  private static Map<String, Object> wrench(Wrench w) {
    return object(
        "wrench", w.serial(),
        "low", w.low().toString(),
        "high", w.high().toString(),
        "kind", w.kind().code(),
        "certificate", w.certificate(),
        "calibrated", Moments.text(w.calibrated()),
        "due", Moments.text(w.due()),
        "uncertainty", w.uncertainty().map(Object::toString),
        "resolution", w.resolution().map(Object::toString),
        "entry", w.enrolled());
  }

  private static Map<String, Object> person(Person p) {
    return object(
        "badge", p.badge(),
        "name", p.enrolled().map(o -> o.name()),
        "roles", p.enrolled().map(o -> o.roles().stream().map(Word::code).toList()));
  }

  private static Map<String, Object> object(Object... pairs) {
    Map<String, Object> object = new LinkedHashMap<>();
    for (int i = 0; i < pairs.length; i += 2) {
      Object value = pairs[i + 1];
      if (value instanceof Optional<?> o) {
        value = o.orElse(null);
      } else if (value instanceof OptionalLong n) {
        value = n.isPresent() ? n.getAsLong() : null;
      }
      if (value != null) {
        object.put((String) pairs[i], value);
      }
    }
    return object;
  }
}
