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
import witnessmark.procedure.Stage;
import witnessmark.procedure.TightenStep;
import witnessmark.torque.TorqueEvent;
import witnessmark.torque.Verdict;

/** How entries about a job change it. Decides nothing: an entry says what it changed. */
final class JobFold {
  private JobFold() {}

  /**
   * A reading as its entry repeats it.
   *
   * @param entry the reading's own entry
   * @param event what was sent; an entry by which a person placed it does not repeat that
   */
  record Sent(long entry, Optional<TorqueEvent> event) {}

  static JobState attested(JobState job, long n, Entry.Attested entry) {
    return gate(job, entry.step(), n);
  }

  static JobState measured(JobState job, long n, Entry.Measured entry) {
    return entry.within() ? gate(job, entry.step(), n) : job;
  }

  static JobState torque(JobState job, long n, Entry.TorqueTaken entry) {
    return judged(job, n, entry.judged(), new Sent(n, Optional.of(entry.event())))
        .withNamed(Optional.empty());
  }

  static JobState assigned(JobState job, long n, Entry.Assigned entry) {
    return judged(
        settle(job, entry.assigns()),
        n,
        entry.judged(),
        new Sent(entry.assigns(), Optional.empty()));
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

  private static JobState judged(JobState job, long n, Judged judged, Sent sent) {
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
          case AGAIN -> pulled(condition.atMost(pass), judged, sent);
          case NONCONFORMING -> condition.failed(n, pass);
          case LOOSENED -> condition.loosened();
          case RECHECKED, NONE, ASKS -> condition;
        };
    Condition held =
        judged.effect() == Effect.LOOSENED
            ? changed
            : Pull.of(sent, pass, judged).map(p -> held(changed, judged, p)).orElse(changed);
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

  /**
   * A pull that ended below the band has turned the fastener all the same. Of one that a person
   * placed the entry does not repeat the torque.
   */
  private static Condition pulled(Condition condition, Judged judged, Sent sent) {
    boolean counts =
        judged.verdict().equals(Optional.of(Verdict.UNDER_TORQUE)) && judged.objections().isEmpty();
    if (!counts || judged.angleTotal().isEmpty()) {
      return condition;
    }
    BigDecimal reached = sent.event().map(e -> e.torque().newtonMetres()).orElse(BigDecimal.ZERO);
    return condition.turned(
        judged.angleTotal().get().degrees().value(), reached.max(condition.reached()));
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
