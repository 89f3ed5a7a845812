package witnessmark.match;

import java.util.ArrayList;
import java.util.List;
import witnessmark.entry.Reason;
import witnessmark.job.JobState;
import witnessmark.procedure.Order;
import witnessmark.procedure.Stage;
import witnessmark.torque.Angle;
import witnessmark.torque.Side;
import witnessmark.torque.TorqueEvent;

/** Places a tightening by the order of work, the wrench, the angle and the torque. */
final class InOrder {
  private InOrder() {}

  static Placement of(JobState job, TorqueEvent event) {
    List<Stage> open = open(job);
    if (open.isEmpty()) {
      return nothingExpected(job, event);
    }
    if (open.size() == 1) {
      return NextOrAgain.of(job, event, next(job, open.get(0)));
    }
    List<Stage> candidates = candidates(open, event);
    if (candidates.size() == 1) {
      return NextOrAgain.of(
          job, event, chosen(job, candidates.get(0), Reason.ONLY_PLACE_FOR_WRENCH, List.of()));
    }
    return several(job, event, candidates);
  }

  /** The stages where a fastener may be tightened now. */
  static List<Stage> open(JobState job) {
    return job.openStages().stream().filter(s -> !job.next(s).isEmpty()).toList();
  }

  /** Those where the wrench may be used; all, where it may be used on none. */
  static List<Stage> candidates(List<Stage> open, TorqueEvent event) {
    List<Stage> allowed = open.stream().filter(s -> Bands.allows(s, event.wrench())).toList();
    return allowed.isEmpty() ? open : allowed;
  }

  private static Placement several(JobState job, TorqueEvent event, List<Stage> candidates) {
    List<Stage> fitting =
        candidates.stream().filter(s -> Bands.side(s, event.torque()) == Side.INSIDE).toList();
    List<Stage> could = fitting.isEmpty() ? candidates : fitting;
    List<Stage> fresh = could.stream().filter(s -> evidence(job, s, event) != Sign.TIGHT).toList();
    if (fresh.isEmpty() && could.size() > 1) {
      Tight tight = Tight.of(job, event, -1);
      if (tight.side() == Side.INSIDE) {
        Reason reason = Evidence.of(job, first(job, could.get(0)), could.get(0), event).again();
        return NextOrAgain.again(job, event, tight.newest().orElseThrow(), -1, reason);
      }
    }
    List<Stage> left = fresh.isEmpty() ? fitting : fresh;
    if (fitting.size() > 1 && left.size() > 1) {
      left = left.stream().filter(s -> windowHolds(job, s, event)).toList();
    }
    if (fitting.isEmpty() || left.size() != 1) {
      return Placement.nowhere(Reason.SEVERAL_POSSIBLE, names(job, candidates));
    }
    Stage only = left.get(0);
    List<String> others = new ArrayList<>(names(job, candidates));
    others.remove(job.plan().name(first(job, only)));
    Reason reason = fitting.size() == 1 ? Reason.ONLY_BAND_THAT_FITS : Reason.ONLY_ANGLE_THAT_FITS;
    return NextOrAgain.of(job, event, chosen(job, only, reason, others));
  }

  /**
   * Where nothing is to be tightened, a hit above the band of a tight fastener is asked about: it
   * may have been damaged, and it is not known which.
   */
  private static Placement nothingExpected(JobState job, TorqueEvent event) {
    Tight tight = Tight.of(job, event, -1);
    if (tight.side() == Side.ABOVE) {
      int newest = tight.newest().orElseThrow();
      return Placement.nowhere(Reason.SEVERAL_POSSIBLE, List.of(job.plan().name(newest)));
    }
    return Placement.nowhere(job.complete() ? Reason.NOTHING_LEFT : Reason.JOB_WAITS, List.of());
  }

  private static Sign evidence(JobState job, Stage stage, TorqueEvent event) {
    return Evidence.of(job, first(job, stage), stage, event).sign();
  }

  private static boolean windowHolds(JobState job, Stage stage, TorqueEvent event) {
    if (event.angle().isEmpty() || Bands.pass(stage).angle().isEmpty()) {
      return true;
    }
    Angle total = event.angle().get().plus(job.condition(first(job, stage)).turned());
    return Bands.pass(stage).angle().get().side(total) == Side.INSIDE;
  }

  private static Placement next(JobState job, Stage stage) {
    List<Integer> pending = job.next(stage);
    boolean any = Bands.step(stage).order(stage.pass()).kind() == Order.Kind.ANY;
    return any && pending.size() > 1
        ? Placement.on(Reason.COUNTED_IN_GROUP, pending.get(0), stage)
        : Placement.on(Reason.NEXT_IN_SEQUENCE, pending.get(0), stage);
  }

  private static Placement chosen(
      JobState job, Stage stage, Reason reason, List<String> alternatives) {
    return Placement.on(reason, first(job, stage), stage, alternatives);
  }

  private static List<String> names(JobState job, List<Stage> stages) {
    return stages.stream().map(s -> job.plan().name(first(job, s))).toList();
  }

  private static int first(JobState job, Stage stage) {
    return job.next(stage).get(0);
  }
}
