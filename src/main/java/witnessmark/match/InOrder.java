package witnessmark.match;

import java.util.ArrayList;
import java.util.List;
import witnessmark.entry.Reason;
import witnessmark.job.JobState;
import witnessmark.procedure.Order;
import witnessmark.procedure.Stage;
import witnessmark.procedure.TightenStep;
import witnessmark.torque.Side;
import witnessmark.torque.TorqueEvent;

/** Places a tightening by the order of work, the wrench and the torque. */
final class InOrder {
  private InOrder() {}

  static Placement of(JobState job, TorqueEvent event) {
    List<Stage> open = job.openStages().stream().filter(s -> !job.next(s).isEmpty()).toList();
    if (open.isEmpty()) {
      return Placement.nowhere(job.complete() ? Reason.NOTHING_LEFT : Reason.JOB_WAITS, List.of());
    }
    if (open.size() == 1) {
      return next(job, open.get(0));
    }
    List<Stage> allowed = open.stream().filter(s -> allows(s, event.wrench())).toList();
    if (allowed.size() == 1) {
      return chosen(job, allowed.get(0), Reason.ONLY_PLACE_FOR_WRENCH, List.of());
    }
    List<Stage> candidates = allowed.isEmpty() ? open : allowed;
    List<Stage> fitting =
        candidates.stream().filter(s -> Bands.side(s, event.torque()) == Side.INSIDE).toList();
    if (fitting.size() == 1) {
      List<String> others = new ArrayList<>(names(job, candidates));
      others.remove(first(job, fitting.get(0)));
      return chosen(job, fitting.get(0), Reason.ONLY_BAND_THAT_FITS, others);
    }
    return Placement.nowhere(Reason.SEVERAL_POSSIBLE, names(job, candidates));
  }

  private static Placement next(JobState job, Stage stage) {
    List<Integer> pending = job.next(stage);
    boolean any = ((TightenStep) stage.step()).order().kind() == Order.Kind.ANY;
    return any && pending.size() > 1
        ? Placement.on(Reason.COUNTED_IN_GROUP, pending.get(0), stage)
        : Placement.on(Reason.NEXT_IN_SEQUENCE, pending.get(0), stage);
  }

  private static Placement chosen(
      JobState job, Stage stage, Reason reason, List<String> alternatives) {
    return Placement.on(reason, job.next(stage).get(0), stage, alternatives);
  }

  private static boolean allows(Stage stage, String wrench) {
    List<String> wrenches = ((TightenStep) stage.step()).wrenches();
    return wrenches.isEmpty() || wrenches.contains(wrench);
  }

  private static List<String> names(JobState job, List<Stage> stages) {
    return stages.stream().map(s -> first(job, s)).toList();
  }

  private static String first(JobState job, Stage stage) {
    return job.plan().name(job.next(stage).get(0));
  }
}
