package witnessmark.desk;

import java.util.Optional;
import java.util.OptionalInt;
import witnessmark.entry.Judged;
import witnessmark.entry.Role;
import witnessmark.job.JobState;
import witnessmark.job.Operator;
import witnessmark.job.Shop;
import witnessmark.procedure.TightenStep;
import witnessmark.torque.Direction;
import witnessmark.torque.Side;
import witnessmark.torque.TorqueEvent;

/** Who may say that a reading was on no fastener of the job. */
final class OnNone {
  private OnNone() {}

  /**
   * A reading above the band of one that is asked about may have damaged it: that it was on none is
   * quality's to say.
   *
   * @return the role that it takes
   */
  static Optional<Role> role(
      Shop shop, JobState job, Judged standing, TorqueEvent event, String by) {
    Optional<String> harmed =
        standing.alternatives().stream().filter(name -> tooMuch(job, name, event)).findFirst();
    if (harmed.isEmpty() || mayDecide(shop.operators().get(by))) {
      return harmed.map(h -> Role.QUALITY);
    }
    throw new Declined(
        event.torque()
            + " is too much for "
            + harmed.get()
            + ": only quality may say that it was on none. Say which it was (assign). "
            + Decider.ask("quality", shop, OnNone::mayDecide));
  }

  private static boolean tooMuch(JobState job, String name, TorqueEvent event) {
    OptionalInt fastener = job.plan().fastener(name);
    if (fastener.isEmpty() || event.direction() == Direction.CCW) {
      return false;
    }
    TightenStep step = job.plan().stepOf(fastener.getAsInt());
    int due = Math.min(job.condition(fastener.getAsInt()).done(), step.passes().size() - 1);
    return step.side(due, event.torque()) == Side.ABOVE;
  }

  private static boolean mayDecide(Operator operator) {
    return operator.roles().stream().anyMatch(r -> r.covers(Role.QUALITY));
  }
}
