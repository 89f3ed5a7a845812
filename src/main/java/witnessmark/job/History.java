package witnessmark.job;

import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;

/**
 * A job's facts in the order in which they happened. Its state is what they give in that order, so
 * a fact that becomes known late changes what stands after it.
 */
public final class History {
  private History() {}

  /** The job as it stood when everything up to the moment had happened and nothing after it. */
  public static JobState at(JobState job, Instant moment) {
    return back(job, a -> a.moment().isAfter(moment), new ArrayDeque<>()).standing(job);
  }

  /** The job just before the fact of entry {@code n}; empty where it has none. */
  public static Optional<JobState> before(JobState job, long n) {
    return find(job, n).map(p -> p.before().standing(job));
  }

  /** The job as an event met it: before its fact, or at its place where it has none. */
  public static JobState met(JobState job, long n, Instant place) {
    return before(job, n).orElseGet(() -> at(job, place));
  }

  /** The job just after the fact of entry {@code n}. */
  public static JobState after(JobState job, long n) {
    return back(job, a -> a.n() != n, new ArrayDeque<>()).standing(job);
  }

  /** What happened after the fact of entry {@code n}, in order. */
  public static List<Act> since(JobState job, long n) {
    Deque<Act> later = new ArrayDeque<>();
    back(job, a -> a.n() != n, later);
    return List.copyOf(later);
  }

  /** All facts, in order. */
  public static List<Act> all(JobState job) {
    Deque<Act> acts = new ArrayDeque<>();
    back(job, a -> true, acts);
    return List.copyOf(acts);
  }

  /** The same history with one more fact at its place. */
  public static JobState with(JobState job, Act act) {
    if (job.past().filter(p -> Act.ORDER.compare(p.act(), act) > 0).isEmpty()) {
      return next(job, act);
    }
    Deque<Act> later = new ArrayDeque<>();
    JobState base = back(job, a -> Act.ORDER.compare(a, act) > 0, later);
    later.addFirst(act);
    return forth(base, later).standing(job);
  }

  /** The same history with the fact of entry {@code n} changed. */
  static JobState changed(JobState job, long n, UnaryOperator<Act> change) {
    Past past = find(job, n).orElseThrow(() -> new IllegalStateException("no entry " + n));
    Deque<Act> later = new ArrayDeque<>(since(job, n));
    later.addFirst(change.apply(past.act()));
    return forth(past.before(), later).standing(job);
  }

  /** The fact of entry {@code n}. */
  public static Optional<Act> of(JobState job, long n) {
    return find(job, n).map(Past::act);
  }

  /** The state after a fact that follows all others. */
  public static JobState next(JobState job, Act act) {
    return JobFold.apply(job, act).withPast(new Past(job, act));
  }

  private static Optional<Past> find(JobState job, long n) {
    return back(job, a -> a.n() != n, new ArrayDeque<>()).past();
  }

  private static JobState back(JobState job, Predicate<Act> goOn, Deque<Act> passed) {
    JobState state = job;
    while (state.past().isPresent() && goOn.test(state.past().get().act())) {
      passed.addFirst(state.past().get().act());
      state = state.past().get().before();
    }
    return state;
  }

  private static JobState forth(JobState base, Iterable<Act> acts) {
    JobState state = base;
    for (Act act : acts) {
      state = next(state, act);
    }
    return state;
  }
}
