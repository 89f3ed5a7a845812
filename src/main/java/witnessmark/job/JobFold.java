package witnessmark.job;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import witnessmark.entry.Effect;
import witnessmark.entry.Entry;
import witnessmark.entry.Judged;
import witnessmark.entry.Meaning;
import witnessmark.procedure.Stage;
import witnessmark.procedure.TightenStep;
import witnessmark.torque.Verdict;

/** How entries about a job change it. Decides nothing: an entry says what it changed. */
final class JobFold {
  private JobFold() {}

  /** The state after a fact, without its history. */
  static JobState apply(JobState job, Act act) {
    if (act.judged().isPresent()) {
      return judged(job, act, act.judged().get());
    } else if (act.entry() instanceof Entry.Attested e) {
      return gate(job, e.step(), act.n());
    } else if (act.entry() instanceof Entry.Measured e) {
      return e.within() ? gate(job, e.step(), act.n()) : job;
    } else if (act.entry() instanceof Entry.Disposed e) {
      return disposed(job, act.n(), e);
    }
    throw new IllegalStateException("no fold for " + act.entry().getClass());
  }

  static JobState torque(JobState job, long n, Entry.TorqueTaken entry) {
    return History.with(job, Act.of(n, entry))
        .withNamed(Optional.empty())
        .withAnswering(job.answering().map(Answering::disturbed));
  }

  static JobState scanned(JobState job, Entry.Scan entry) {
    Optional<Answering> answering = job.answering().map(Answering::disturbed);
    if (entry.question().isPresent()) {
      answering =
          entry.meaning() == Meaning.QUESTION
              ? Optional.of(
                  new Answering(entry.question().getAsLong(), entry.at(), entry.operator(), false))
              : Optional.empty();
    }
    return job.withNamed(entry.fastener().or(job::named)).withAnswering(answering);
  }

  /**
   * A person's placing stands where the event happened. An event that came while no job was open
   * joins the job's history by it.
   */
  static JobState assigned(JobState job, Entry.Assigned entry) {
    JobState placed =
        History.of(job, entry.assigns()).isPresent()
            ? History.changed(job, entry.assigns(), a -> a.decidedByPerson(entry.judged()))
            : History.with(
                job,
                new Act(
                    entry.moment().orElse(entry.at()),
                    entry.assigns(),
                    entry,
                    Optional.of(entry.judged()),
                    true));
    return placed.settling(entry.assigns());
  }

  static JobState reread(JobState job, Entry.Reread entry) {
    return History.changed(job, entry.rereads(), a -> a.decided(entry.judged()));
  }

  private static JobState disposed(JobState job, long n, Entry.Disposed entry) {
    int fastener = job.plan().fastener(entry.fastener()).orElseThrow();
    Condition condition = job.condition(fastener).at(n);
    boolean stillOpen =
        condition.nonconformity().isPresent()
            && condition.nonconformity().getAsLong() == entry.nonconformity()
            && !condition.flaw().get().loose();
    Condition changed =
        switch (entry.disposition()) {
          case REWORK, REPLACE -> condition.toRework();
          case USE_AS_IS -> stillOpen ? condition.conceded() : condition;
          case SCRAP -> condition.scrap();
        };
    return undo(job.with(fastener, changed), entry.undoes());
  }

  private static JobState judged(JobState job, Act act, Judged judged) {
    long n = act.n();
    if (judged.effect() == Effect.ASKS) {
      return job.asking(n);
    }
    if (judged.fastener().isEmpty()) {
      return job;
    }
    int fastener = job.plan().fastener(judged.fastener().get()).orElseThrow();
    int pass = judged.pass().flatMap(p -> job.plan().stage(fastener, p)).map(Stage::pass).orElse(0);
    Condition condition = job.condition(fastener).at(n).pulled(true);
    Condition changed =
        switch (judged.effect()) {
          case CREDITED -> condition.credited(pass);
          case AGAIN -> turned(tried(condition.atMost(pass), judged), judged, act);
          case NONCONFORMING ->
              failed(condition, new Flaw(n, pass, judged.verdict(), hand(act), false));
          case LOOSENED -> condition.loosened();
          case RECHECKED, NONE, ASKS -> condition;
        };
    // One to be replaced that was accepted is another than the one that was held before.
    Condition before =
        condition.rework() && changed.done() > 0 ? changed.pulled(Optional.empty()) : changed;
    Condition held =
        loosens(judged)
            ? changed
            : Pull.of(act, judged, pass).map(p -> held(before, judged, p)).orElse(changed);
    return undo(job.with(fastener, held), judged.undoes());
  }

  /** A pull leaves the fastener held at least as tight as it was. */
  private static Condition held(Condition condition, Judged judged, Pull newest) {
    if (condition.pull().isEmpty()) {
      return condition.pulled(Optional.of(newest));
    }
    Pull before = condition.pull().get();
    boolean fresh = judged.effect() == Effect.CREDITED || judged.effect() == Effect.AGAIN;
    return condition.pulled(Optional.of(fresh ? newest.after(before) : newest.again(before)));
  }

  private static boolean loosens(Judged judged) {
    return judged.effect() == Effect.LOOSENED
        || (judged.effect() == Effect.NONCONFORMING && judged.verdict().isEmpty());
  }

  /** Whose reading it was. */
  private static Optional<String> hand(Act act) {
    if (act.entry() instanceof Entry.TorqueTaken t) {
      return t.event().operator().or(t::operator);
    }
    return act.entry() instanceof Entry.Assigned a ? a.operator() : Optional.empty();
  }

  /** Without a verdict it was a loosening that made it nonconforming. */
  private static Condition failed(Condition condition, Flaw flaw) {
    return flaw.verdict().isPresent() ? condition.failed(flaw) : condition.failed(flaw).loosened();
  }

  private static Condition tried(Condition condition, Judged judged) {
    return judged.verdict().filter(v -> v != Verdict.IN_BAND).isPresent()
        ? condition.tried()
        : condition;
  }

  /** A pull that ended below the band, or perhaps did, has turned the fastener all the same. */
  private static Condition turned(Condition condition, Judged judged, Act act) {
    boolean counts =
        judged
                .verdict()
                .filter(v -> v == Verdict.UNDER_TORQUE || v == Verdict.UNDECIDED)
                .isPresent()
            && judged.objections().isEmpty();
    if (!counts || judged.angleTotal().isEmpty()) {
      return condition;
    }
    BigDecimal reached =
        act.entry() instanceof Entry.TorqueTaken t
            ? t.event().torque().newtonMetres()
            : BigDecimal.ZERO;
    return condition.turned(
        judged.angleTotal().get().degrees().value(), reached.max(condition.reached()));
  }

  private static JobState gate(JobState job, String step, long n) {
    Map<String, Long> gates = new HashMap<>(job.gates());
    gates.put(step, n);
    return job.withGates(gates);
  }

  private static JobState undo(JobState job, List<String> keys) {
    if (keys.isEmpty()) {
      return job;
    }
    List<Condition> conditions = new ArrayList<>(job.conditions());
    Map<String, Long> gates = new HashMap<>(job.gates());
    for (Stage stage : job.plan().stages()) {
      if (!keys.contains(stage.key())) {
        continue;
      }
      if (stage.step() instanceof TightenStep step) {
        job.fastenersOf(step)
            .forEach(
                f ->
                    conditions.set(f, conditions.get(f).atMost(stage.pass()).undone(stage.pass())));
      } else {
        gates.remove(stage.step().id());
      }
    }
    return job.withConditions(List.copyOf(conditions)).withGates(gates);
  }
}
