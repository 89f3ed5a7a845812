package witnessmark.judge;

import java.util.List;
import java.util.Optional;
import witnessmark.entry.Entry;
import witnessmark.entry.Judged;
import witnessmark.entry.Objection;
import witnessmark.entry.Reason;
import witnessmark.job.JobState;
import witnessmark.job.Shop;
import witnessmark.match.Place;
import witnessmark.match.Placement;
import witnessmark.wrench.Wrench;

/** Decides about a torque event: where it belongs, and what it is worth there. */
public final class Decide {
  private Decide() {}

  /**
   * The decision on an event in the job as it stood when the event happened.
   *
   * @param shop for its registers
   * @param taken the event as it came
   * @param scanned the fastener that a scan had named for it
   */
  public static Judged of(
      Shop shop, JobState job, Entry.TorqueTaken taken, Optional<String> scanned) {
    return judged(shop, job, Place.of(job.withNamed(scanned), taken.event()), taken);
  }

  /** The same, on the fastener that a person says it was. */
  public static Judged assigned(Shop shop, JobState job, Entry.TorqueTaken taken, String fastener) {
    Placement placement = Place.named(job, taken.event(), fastener, Reason.ASSIGNED_BY_PERSON);
    return judged(shop, job, placement, taken);
  }

  private static Judged judged(
      Shop shop, JobState job, Placement placement, Entry.TorqueTaken taken) {
    Optional<Wrench> wrench = shop.wrench(taken.event().wrench(), taken.moment());
    List<Objection> objections =
        Objections.of(
            taken.event(), wrench, shop.fromItsSource(taken), taken.moment(), placement.stage());
    return Judge.of(job, placement, taken.event(), wrench, objections);
  }
}
