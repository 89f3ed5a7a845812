package witnessmark.match;

import java.util.List;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import witnessmark.entry.Entry;
import witnessmark.entry.Reason;
import witnessmark.job.Condition;
import witnessmark.job.JobState;

/** Places a loosening whose fastener nobody named. */
final class Loosening {
  private Loosening() {}

  static Placement of(JobState job) {
    List<Integer> rework = where(job, Tight::toReplace);
    if (rework.size() == 1 && justDecided(job, rework.get(0))) {
      return on(job, rework.get(0), Reason.LOOSENED_FOR_REWORK);
    }
    List<Integer> tight = where(job, c -> c.touched() || c.rework());
    if (tight.size() == 1) {
      return on(job, tight.get(0), Reason.ONLY_ONE_TIGHT);
    }
    return Placement.nowhere(
        Reason.LOOSENED_WHICH, tight.stream().map(f -> job.plan().name(f)).toList());
  }

  /** Nothing was done since it was decided to undo it, so that the next hand is meant for it. */
  private static boolean justDecided(JobState job, int fastener) {
    String name = job.plan().name(fastener);
    return job.newest()
        .filter(a -> a.entry() instanceof Entry.Disposed d && d.fastener().equals(name))
        .isPresent();
  }

  private static List<Integer> where(JobState job, Predicate<Condition> holds) {
    return IntStream.range(0, job.plan().fasteners())
        .filter(f -> holds.test(job.condition(f)))
        .boxed()
        .toList();
  }

  private static Placement on(JobState job, int fastener, Reason reason) {
    int pass = Tight.last(job.condition(fastener));
    return Placement.on(reason, fastener, job.plan().stage(fastener, pass));
  }
}
