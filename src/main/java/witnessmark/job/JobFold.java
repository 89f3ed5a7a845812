package witnessmark.job;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
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

  static JobState attested(JobState job, long n, Entry.Attested entry) {
    return gate(job, entry.step(), n);
  }

  static JobState measured(JobState job, long n, Entry.Measured entry) {
    return entry.within() ? gate(job, entry.step(), n) : job;
  }

  static JobState torque(JobState job, long n, Entry.TorqueTaken entry) {
    return judged(job, n, entry.judged())
        .withNamed(Optional.empty(), job.answering().map(Answering::disturbed));
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
    return job.withNamed(entry.fastener().or(job::named), answering);
  }

  static JobState assigned(JobState job, long n, Entry.Assigned entry) {
    return judged(settle(job, entry.assigns()), n, entry.judged());
  }

  static JobState setAside(JobState job, Entry.SetAside entry) {
    return settle(job, entry.sets());
  }

  static JobState disposed(JobState job, long n, Entry.Disposed entry) {
    int fastener = job.plan().fastener(entry.fastener()).orElseThrow();
    Condition condition = job.condition(fastener).at(n);
    Condition changed =
        switch (entry.disposition()) {
          case REWORK, REPLACE -> condition.toRework();
          case USE_AS_IS -> condition.conceded();
          case SCRAP -> condition.scrap();
        };
    return undo(job.with(fastener, changed), entry.undoes());
  }

  private static JobState judged(JobState job, long n, Judged judged) {
    if (judged.effect() == Effect.ASKS) {
      return question(job, n);
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

  private static JobState question(JobState job, long n) {
    Set<Long> open = new HashSet<>(job.questions());
    open.add(n);
    return job.withQuestions(open, job.settled());
  }

  private static JobState settle(JobState job, long n) {
    Set<Long> open = new HashSet<>(job.questions());
    open.remove(n);
    Set<Long> settled = new HashSet<>(job.settled());
    settled.add(n);
    return job.withQuestions(open, settled);
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
