package witnessmark.judge;

import java.util.Optional;
import witnessmark.entry.Entry;
import witnessmark.entry.Judged;
import witnessmark.entry.Reason;
import witnessmark.job.JobState;
import witnessmark.job.Shop;
import witnessmark.match.Place;
import witnessmark.match.Placement;
import witnessmark.torque.TorqueEvent;

/** Decides about a torque event: where it belongs, and what it is worth there. */
public final class Decide {
  private Decide() {}

  /**
   * The decision on an event in the job as it stood when the event happened.
   *
   * @param shop for its registers
   * @param scanned the fastener that a scan had named for it
   */
  public static Judged of(
      Shop shop,
      JobState job,
      TorqueEvent event,
      Optional<String> scanned,
      java.time.Instant moment) {
    Placement placement = Place.of(job.withNamed(scanned), event);
    return Judge.of(job, placement, event, shop.wrench(event.wrench(), moment), moment);
  }

  /** The same, on the fastener that a person says it was. */
  public static Judged assigned(Shop shop, JobState job, Entry.TorqueTaken taken, String fastener) {
    Placement placement = Place.named(job, taken.event(), fastener, Reason.ASSIGNED_BY_PERSON);
    return Judge.of(
        job,
        placement,
        taken.event(),
        shop.wrench(taken.event().wrench(), taken.moment()),
        taken.moment());
  }
}
