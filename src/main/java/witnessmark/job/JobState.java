package witnessmark.job;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import witnessmark.procedure.Order;
import witnessmark.procedure.Stage;
import witnessmark.procedure.TightenStep;

/**
 * One unit's run as the record shows it.
 *
 * @param job its name
 * @param unit the unit's number
 * @param station where it is, or was when it was suspended
 * @param plan the procedure revision it follows
 * @param status open or suspended
 * @param conditions one for each fastener of the plan
 * @param gates attest and measure steps that are satisfied, with the entry that did it
 * @param questions torque events that a person must place before the job can close
 * @param settled torque events that a person has placed or set aside
 * @param named the fastener that a scan named for the next torque event
 * @param answering the question that the next position scanned answers
 */
public record JobState(
    String job,
    String unit,
    String station,
    Plan plan,
    Status status,
    List<Condition> conditions,
    Map<String, Long> gates,
    Set<Long> questions,
    Set<Long> settled,
    Optional<String> named,
    Optional<Answering> answering) {

  /** A job just opened. */
  public static JobState opened(String job, String unit, String station, Plan plan) {
    return new JobState(
        job,
        unit,
        station,
        plan,
        Status.OPEN,
        Collections.nCopies(plan.fasteners(), Condition.LOOSE),
        Map.of(),
        Set.of(),
        Set.of(),
        Optional.empty(),
        Optional.empty());
  }

  public Condition condition(int fastener) {
    return conditions.get(fastener);
  }

  /** Whether the stage is complete and nothing about it is open. */
  public boolean done(Stage stage) {
    if (!(stage.step() instanceof TightenStep step)) {
      return gates.containsKey(stage.step().id());
    }
    int first = plan.first(step);
    for (int i = 0; i < step.positions().size(); i++) {
      if (!conditions.get(first + i).stands(stage.pass())) {
        return false;
      }
    }
    return true;
  }

  /** The stages that may be worked on now: not done, and everything they require is. */
  public List<Stage> openStages() {
    boolean[] done = new boolean[plan.stages().size()];
    for (Stage stage : plan.stages()) {
      done[stage.number()] = done(stage);
    }
    List<Stage> open = new ArrayList<>();
    for (Stage stage : plan.stages()) {
      if (!done[stage.number()] && allDone(stage.requires(), done)) {
        open.add(stage);
      }
    }
    return open;
  }

  private static boolean allDone(Set<Integer> stages, boolean[] done) {
    for (int s : stages) {
      if (!done[s]) {
        return false;
      }
    }
    return true;
  }

  /** Whether the stage's group waits for a disposition. */
  public boolean blocked(Stage stage) {
    return stage.step() instanceof TightenStep step
        && fastenersOf(step).anyMatch(f -> conditions.get(f).nonconforming());
  }

  /**
   * The fasteners of an open tighten stage that may be next, in working order: one for a strict
   * order or a pattern, every pending one for any order. None while the group waits for a
   * disposition.
   */
  public List<Integer> next(Stage stage) {
    if (!(stage.step() instanceof TightenStep step) || blocked(stage)) {
      return List.of();
    }
    int first = plan.first(step);
    List<Integer> pending = new ArrayList<>();
    for (int index : step.order().sequence()) {
      if (!conditions.get(first + index).stands(stage.pass())) {
        pending.add(first + index);
        if (step.order().kind() != Order.Kind.ANY) {
          break;
        }
      }
    }
    return pending;
  }

  /** The fasteners that wait for a disposition. */
  public List<Integer> nonconforming() {
    return IntStream.range(0, conditions.size())
        .filter(f -> conditions.get(f).nonconforming())
        .boxed()
        .toList();
  }

  /** Whether every fastener and gate stands and no question is open, so that the job may close. */
  public boolean complete() {
    return questions.isEmpty() && plan.stages().stream().allMatch(this::done);
  }

  /** How many fastener passes stand. */
  public int passesDone() {
    return IntStream.range(0, conditions.size())
        .map(f -> conditions.get(f).nonconforming() ? 0 : conditions.get(f).done())
        .sum();
  }

  IntStream fastenersOf(TightenStep step) {
    int first = plan.first(step);
    return IntStream.range(first, first + step.positions().size());
  }

  JobState with(int fastener, Condition condition) {
    Condition[] copy = conditions.toArray(new Condition[0]);
    copy[fastener] = condition;
    return withConditions(Arrays.asList(copy));
  }

  JobState withConditions(List<Condition> changed) {
    return new JobState(
        job, unit, station, plan, status, changed, gates, questions, settled, named, answering);
  }

  JobState withGates(Map<String, Long> changed) {
    return new JobState(
        job,
        unit,
        station,
        plan,
        status,
        conditions,
        Map.copyOf(changed),
        questions,
        settled,
        named,
        answering);
  }

  JobState withQuestions(Set<Long> open, Set<Long> answered) {
    return new JobState(
        job,
        unit,
        station,
        plan,
        status,
        conditions,
        gates,
        Set.copyOf(open),
        Set.copyOf(answered),
        named,
        answering);
  }

  JobState withStatus(Status changed, String at) {
    return new JobState(
        job,
        unit,
        at,
        plan,
        changed,
        conditions,
        gates,
        questions,
        settled,
        Optional.empty(),
        Optional.empty());
  }

  JobState withNamed(Optional<String> fastener, Optional<Answering> answers) {
    return new JobState(
        job, unit, station, plan, status, conditions, gates, questions, settled, fastener, answers);
  }
}
