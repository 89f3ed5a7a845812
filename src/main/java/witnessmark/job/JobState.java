package witnessmark.job;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashSet;
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
 * @param asked torque events whose place was asked for
 * @param settled torque events that a person has placed or set aside
 * @param named the fastener that a scan named for the next torque event
 * @param answering the question that the next position scanned answers
 * @param stays when it was open at which station
 * @param entries how many entries it has, scans aside
 * @param past how it came to this state; empty before its first fact
 */
public record JobState(
    String job,
    String unit,
    String station,
    Plan plan,
    Status status,
    List<Condition> conditions,
    Map<String, Long> gates,
    Set<Long> asked,
    Set<Long> settled,
    Optional<String> named,
    Optional<Answering> answering,
    List<Stay> stays,
    long entries,
    Optional<Past> past) {

  /** A job just opened. */
  public static JobState opened(String job, String unit, String station, Plan plan, Instant at) {
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
        Optional.empty(),
        List.of(new Stay(station, at, Optional.empty())),
        1,
        Optional.empty());
  }

  /** Torque events that a person must place before the job can close. */
  public Set<Long> questions() {
    if (asked.isEmpty() || Collections.disjoint(asked, settled)) {
      return asked;
    }
    Set<Long> open = new HashSet<>(asked);
    open.removeAll(settled);
    return open;
  }

  /** Whether the job was open at the station at the moment. */
  public boolean was(String where, Instant moment) {
    return stays.stream().anyMatch(s -> s.covers(where, moment));
  }

  /** The fact that happened last; empty before the first. */
  public Optional<Act> newest() {
    return past.map(Past::act);
  }

  public Condition condition(int fastener) {
    return conditions.get(fastener);
  }

  /** Whether the stage is complete and nothing about it is open. */
  public boolean done(Stage stage) {
    if (!(stage.step() instanceof TightenStep step)) {
      return gates.containsKey(stage.step().id());
    }
    int first = plan.first(stage);
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
    Order order = step.order(stage.pass());
    for (int index : order.sequence()) {
      if (!conditions.get(first + index).stands(stage.pass())) {
        pending.add(first + index);
        if (order.kind() != Order.Kind.ANY) {
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
    return questions().isEmpty() && plan.stages().stream().allMatch(this::done);
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
    return facts(changed, gates, asked, past);
  }

  JobState withGates(Map<String, Long> changed) {
    return facts(conditions, Map.copyOf(changed), asked, past);
  }

  JobState asking(long n) {
    return facts(conditions, gates, and(asked, n), past);
  }

  JobState withPast(Past how) {
    return facts(conditions, gates, asked, Optional.of(how));
  }

  JobState settling(long n) {
    return standing(status, station, and(settled, n), named, answering, stays, entries);
  }

  private static Set<Long> and(Set<Long> some, long n) {
    Set<Long> more = new HashSet<>(some);
    more.add(n);
    return Set.copyOf(more);
  }

  JobState suspended(Instant at) {
    return standing(
        Status.SUSPENDED, station, settled, Optional.empty(), Optional.empty(), ended(at), entries);
  }

  JobState resumed(String where, Instant at) {
    List<Stay> more = new ArrayList<>(ended(at));
    more.add(new Stay(where, at, Optional.empty()));
    return standing(Status.OPEN, where, settled, Optional.empty(), Optional.empty(), more, entries);
  }

  private List<Stay> ended(Instant at) {
    return stays.stream()
        .map(s -> s.to().isPresent() ? s : new Stay(s.station(), s.from(), Optional.of(at)))
        .toList();
  }

  /** The same fastener for the next torque event, or none. */
  public JobState withNamed(Optional<String> fastener) {
    return standing(status, station, settled, fastener, answering, stays, entries);
  }

  JobState withAnswering(Optional<Answering> question) {
    return standing(status, station, settled, named, question, stays, entries);
  }

  /** What its history gives, where everything else stays. */
  private JobState facts(
      List<Condition> fasteners, Map<String, Long> gated, Set<Long> asks, Optional<Past> how) {
    return new JobState(
        job, unit, station, plan, status, fasteners, gated, asks, settled, named, answering, stays,
        entries, how);
  }

  /** The same facts, with the status, place and settled questions of another state of the job. */
  JobState standing(JobState other) {
    return standing(
        other.status,
        other.station,
        other.settled,
        other.named,
        other.answering,
        other.stays,
        other.entries);
  }

  /** The same job with one more entry. */
  JobState counted(long count) {
    return standing(status, station, settled, named, answering, stays, count);
  }

  private JobState standing(
      Status as,
      String where,
      Set<Long> answered,
      Optional<String> fastener,
      Optional<Answering> question,
      List<Stay> when,
      long count) {
    return new JobState(
        job,
        unit,
        where,
        plan,
        as,
        conditions,
        gates,
        asked,
        answered,
        fastener,
        question,
        List.copyOf(when),
        count,
        past);
  }
}
