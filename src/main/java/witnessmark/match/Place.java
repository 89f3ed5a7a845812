package witnessmark.match;

import java.util.Optional;
import witnessmark.entry.Reason;
import witnessmark.job.JobState;
import witnessmark.torque.Direction;
import witnessmark.torque.TorqueEvent;

/** Finds the fastener of a torque event. */
public final class Place {
  private Place() {}

  /**
   * Where the event belongs in the job.
   *
   * <p>A position that the event or a scan names comes first; the order of work comes next; where
   * it leaves several places open, the wrench and then the torque may decide. What none of these
   * decides is not guessed.
   */
  public static Placement of(JobState job, TorqueEvent event) {
    Optional<String> named = event.fastener().or(job::named);
    if (named.isPresent()) {
      Reason how = event.fastener().isPresent() ? Reason.NAMED_BY_EVENT : Reason.NAMED_BY_SCAN;
      return named(job, event, named.get(), how);
    }
    return event.direction() == Direction.CCW ? Loosening.of(job) : InOrder.of(job, event);
  }

  /** Where the event belongs when a fastener is named; {@code how} says by whom. */
  public static Placement named(JobState job, TorqueEvent event, String fastener, Reason how) {
    return Named.of(job, event, fastener, how);
  }
}
