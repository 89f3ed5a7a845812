package witnessmark.record;

import java.util.Optional;
import java.util.OptionalLong;
import witnessmark.entry.Entry;
import witnessmark.job.Act;
import witnessmark.job.Condition;
import witnessmark.job.History;
import witnessmark.job.JobState;

/** By which fact each pass of each fastener stands, told by walking a job's facts in order. */
final class Standing {
  private final Act[][] by;

  private Standing(Act[][] by) {
    this.by = by;
  }

  static Standing of(JobState job) {
    Act[][] by = new Act[job.plan().fasteners()][];
    for (int f = 0; f < by.length; f++) {
      by[f] = new Act[job.plan().stepOf(f).passes().size()];
    }
    JobState state =
        JobState.opened(
            job.job(), job.unit(), job.station(), job.plan(), job.stays().get(0).from());
    for (Act act : History.all(job)) {
      JobState next = History.next(state, act);
      for (int f = 0; f < by.length; f++) {
        note(by[f], state.condition(f), next.condition(f), act);
      }
      state = next;
    }
    return new Standing(by);
  }

  private static void note(Act[] passes, Condition before, Condition after, Act act) {
    if (before == after) {
      return;
    }
    for (int p = 0; p < passes.length; p++) {
      if (after.done() <= p) {
        passes[p] = null;
      } else if (before.done() <= p) {
        passes[p] = act;
      }
    }
  }

  /** The entry of the fact, where the pass is done. */
  OptionalLong by(int fastener, int pass) {
    return act(fastener, pass).map(a -> OptionalLong.of(a.n())).orElse(OptionalLong.empty());
  }

  /** Whether a disposition did it. */
  boolean conceded(int fastener, int pass) {
    return act(fastener, pass).filter(a -> a.entry() instanceof Entry.Disposed).isPresent();
  }

  private Optional<Act> act(int fastener, int pass) {
    return Optional.ofNullable(by[fastener][pass]);
  }
}
