package witnessmark.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Stream;
import witnessmark.entry.Effect;
import witnessmark.entry.Entry;
import witnessmark.entry.Judged;
import witnessmark.job.Act;
import witnessmark.job.Condition;
import witnessmark.job.History;
import witnessmark.job.JobState;
import witnessmark.job.Plan;
import witnessmark.procedure.Stage;
import witnessmark.procedure.TightenStep;

/** Compiles one job's record from its course. */
final class Compiled {
  private final Course course;
  private final Fold fold;
  private final JobState job;
  private final Plan plan;
  private final Standing standing;
  private final List<Attempt> attempts;

  Compiled(Course course, Fold fold) {
    this.course = course;
    this.fold = fold;
    this.job = course.state;
    this.plan = job.plan();
    this.standing = Standing.of(job);
    List<Act> decided = History.all(job).stream().filter(a -> a.judged().isPresent()).toList();
    Set<Long> counted = ByCount.of(plan, decided);
    this.attempts = decided.stream().map(a -> attempt(a).byCount(counted.contains(a.n()))).toList();
  }

  JobRecord record() {
    List<Attempt> late =
        course.late.stream().map(n -> attempt(n.n(), fold.taken(n.n()).judged(), false)).toList();
    Cast cast = new Cast(attempts, late);
    return new JobRecord(
        course.opened.job(),
        course.opened.unit(),
        plan.procedure(),
        course.released,
        outcome(),
        course.life,
        passes(),
        attempts.stream().filter(a -> placed(a) && pass(a).isEmpty()).toList(),
        attempts.stream().filter(a -> !placed(a)).map(this::unplaced).toList(),
        deviations(),
        gates(),
        course.corrections,
        Lacking.of(job),
        late,
        cast.wrenches(),
        cast.unknownWrenches(),
        cast.people(List.of(course.life, course.acts, course.corrections), fold.shop()),
        fold.foundLater(attempts.stream().filter(Compiled::placed).toList()),
        course.count);
  }

  private JobRecord.Outcome outcome() {
    Entry last = course.life.get(course.life.size() - 1).entry();
    if (last instanceof Entry.JobClosed) {
      return JobRecord.Outcome.CLOSED;
    } else if (last instanceof Entry.JobAbandoned) {
      return JobRecord.Outcome.ABANDONED;
    }
    return last instanceof Entry.JobSuspended
        ? JobRecord.Outcome.SUSPENDED
        : JobRecord.Outcome.OPEN;
  }

  private Attempt attempt(Act act) {
    Judged judged = act.judged().orElseThrow();
    boolean stands =
        judged
            .fastener()
            .map(f -> plan.fastener(f).orElseThrow())
            .filter(f -> standsBy(f, act.n()))
            .isPresent();
    return attempt(act.n(), judged, stands);
  }

  private boolean standsBy(int fastener, long n) {
    for (int p = 0; p < plan.stepOf(fastener).passes().size(); p++) {
      if (standing.by(fastener, p).equals(OptionalLong.of(n))) {
        return true;
      }
    }
    return false;
  }

  private Attempt attempt(long n, Judged judged, boolean stands) {
    return new Attempt(
        n, course.decided.getOrDefault(n, n), fold.taken(n), judged, fold.wrench(n), stands, false);
  }

  private static boolean placed(Attempt attempt) {
    return attempt.judged().fastener().isPresent();
  }

  private Optional<Stage> pass(Attempt attempt) {
    int fastener = plan.fastener(attempt.judged().fastener().orElseThrow()).orElseThrow();
    return attempt.judged().pass().flatMap(p -> plan.stage(fastener, p));
  }

  /** By step, then pass, then position, as the work goes. */
  private List<PassRecord> passes() {
    List<PassRecord> passes = new ArrayList<>();
    for (Stage stage : plan.stages()) {
      if (stage.step() instanceof TightenStep step) {
        int first = plan.first(step);
        for (int i = 0; i < step.positions().size(); i++) {
          passes.add(pass(step, first + i, stage.pass()));
        }
      }
    }
    return passes;
  }

  private PassRecord pass(TightenStep step, int fastener, int pass) {
    String name = plan.name(fastener);
    String passName = step.passes().get(pass).name();
    List<Attempt> here =
        attempts.stream()
            .filter(a -> a.judged().fastener().equals(Optional.of(name)))
            .filter(a -> a.judged().pass().equals(Optional.of(passName)))
            .toList();
    return new PassRecord(
        name, step, step.passes().get(pass), here, state(fastener, pass), by(fastener, pass));
  }

  private PassRecord.State state(int fastener, int pass) {
    Condition condition = job.condition(fastener);
    boolean flawed =
        pass == condition.nonconformingPass()
            || pass > condition.nonconformingPass() && condition.done() > pass;
    if (condition.nonconforming() && flawed) {
      return PassRecord.State.NONCONFORMING;
    }
    if (condition.done() <= pass) {
      return PassRecord.State.PENDING;
    }
    return standing.conceded(fastener, pass) ? PassRecord.State.CONCEDED : PassRecord.State.STANDS;
  }

  private OptionalLong by(int fastener, int pass) {
    PassRecord.State state = state(fastener, pass);
    return state == PassRecord.State.STANDS || state == PassRecord.State.CONCEDED
        ? standing.by(fastener, pass)
        : OptionalLong.empty();
  }

  private Unplaced unplaced(Attempt attempt) {
    Optional<Numbered> setAside =
        course.corrections.stream()
            .filter(c -> c.entry() instanceof Entry.SetAside s && s.sets() == attempt.entry())
            .findFirst();
    return new Unplaced(attempt, setAside, job.questions().contains(attempt.entry()));
  }

  private List<Deviation> deviations() {
    return attempts.stream()
        .filter(a -> a.judged().effect() == Effect.NONCONFORMING)
        .map(this::deviation)
        .toList();
  }

  private Deviation deviation(Attempt attempt) {
    String fastener = attempt.judged().fastener().orElseThrow();
    List<Deviation.Decision> decisions =
        acts(Entry.Disposed.class)
            .filter(n -> ((Entry.Disposed) n.entry()).nonconformity() == attempt.entry())
            .map(
                n ->
                    new Deviation.Decision(
                        n.n(), (Entry.Disposed) n.entry(), fold.signature(n.n())))
            .toList();
    Condition condition = job.condition(plan.fastener(fastener).orElseThrow());
    boolean open = condition.nonconformity().equals(OptionalLong.of(attempt.entry()));
    return new Deviation(fastener, attempt, decisions, open);
  }

  private Stream<Numbered> acts(Class<? extends Entry> kind) {
    return course.acts.stream().filter(n -> kind.isInstance(n.entry()));
  }

  private List<GateRecord> gates() {
    return plan.stages().stream()
        .filter(s -> !(s.step() instanceof TightenStep))
        .map(this::gate)
        .toList();
  }

  private GateRecord gate(Stage stage) {
    String id = stage.step().id();
    List<Numbered> done =
        course.acts.stream()
            .filter(
                n ->
                    n.entry() instanceof Entry.Attested a && a.step().equals(id)
                        || n.entry() instanceof Entry.Measured m && m.step().equals(id))
            .toList();
    Long by = job.gates().get(id);
    return new GateRecord(
        stage.step(), done, by == null ? OptionalLong.empty() : OptionalLong.of(by));
  }
}
