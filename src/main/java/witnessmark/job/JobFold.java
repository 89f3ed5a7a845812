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
      return judged(job, act.n(), act.judged().get());
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
  static JobState assigned(JobState job, long n, Entry.Assigned entry) {
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
            && condition.nonconformity().getAsLong() == entry.nonconformity();
    Condition changed =
        switch (entry.disposition()) {
          case REWORK, REPLACE -> condition.toRework();
          case USE_AS_IS -> stillOpen ? condition.conceded() : condition;
          case SCRAP -> condition.scrap();
        };
    return undo(job.with(fastener, changed), entry.undoes());
  }

  private static JobState judged(JobState job, long n, Judged judged) {
    if (judged.effect() == Effect.ASKS) {
      return job.asking(n);
    }
    if (judged.fastener().isEmpty()) {
      return job;
    }
    int fastener = job.plan().fastener(judged.fastener().get()).orElseThrow();
    int pass = judged.pass().flatMap(p -> job.plan().stage(fastener, p)).map(Stage::pass).orElse(0);
    Condition condition = job.condition(fastener).at(n);
    Condition changed =
        switch (judged.effect()) {
          case CREDITED -> condition.credited(pass);
          case AGAIN -> pulled(condition.atMost(pass), judged);
          case NONCONFORMING -> condition.failed(n, pass);
          case LOOSENED -> condition.atMost(0).turned(BigDecimal.ZERO);
          case RECHECKED, NONE, ASKS -> condition;
        };
    return undo(job.with(fastener, changed), judged.undoes());
  }

  /** A pull that ended below the band has turned the fastener all the same. */
  private static Condition pulled(Condition condition, Judged judged) {
    boolean counts =
        judged.verdict().equals(Optional.of(Verdict.UNDER_TORQUE)) && judged.objections().isEmpty();
    return counts && judged.angleTotal().isPresent()
        ? condition.turned(judged.angleTotal().get().degrees().value())
        : condition;
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
            .forEach(f -> conditions.set(f, conditions.get(f).atMost(stage.pass())));
      } else {
        gates.remove(stage.step().id());
      }
    }
    return job.withConditions(List.copyOf(conditions)).withGates(gates);
  }
}
