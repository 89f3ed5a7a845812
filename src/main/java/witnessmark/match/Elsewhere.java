package witnessmark.match;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import witnessmark.entry.Reason;
import witnessmark.job.Condition;
import witnessmark.job.JobState;
import witnessmark.procedure.Step;
import witnessmark.procedure.TightenStep;
import witnessmark.torque.Side;
import witnessmark.torque.TorqueEvent;

/** Fasteners still to be tightened whose band holds a reading that the expected one's does not. */
final class Elsewhere {
  private Elsewhere() {}

  /**
   * The placement on the expected fastener, where the reading is not plainly meant for another. A
   * reading below the band harms nothing and only hints at others; one above it, that is right for
   * another, is asked about.
   */
  static Placement orThere(JobState job, TorqueEvent event, Placement expected) {
    Side side = Bands.side(expected.stage().orElseThrow(), event.torque());
    if (side == Side.INSIDE) {
      return expected;
    }
    int fastener = expected.fastener().orElseThrow();
    List<String> fitting = fitting(job, event, fastener);
    if (fitting.isEmpty()) {
      return expected;
    }
    if (side == Side.BELOW) {
      return expected.orElse(fitting);
    }
    List<String> could = new ArrayList<>(List.of(job.plan().name(fastener)));
    could.addAll(fitting);
    return Placement.nowhere(Reason.FITS_ELSEWHERE, could);
  }

  /** The first of each group that has a pass to come which the reading would fit. */
  static List<String> fitting(JobState job, TorqueEvent event, int but) {
    List<String> names = new ArrayList<>();
    for (Step each : job.plan().procedure().steps()) {
      if (!(each instanceof TightenStep step) || !Bands.allows(step, event.wrench())) {
        continue;
      }
      int fits = lastThatFits(step, event);
      if (fits < 0) {
        continue;
      }
      int first = job.plan().first(step);
      for (int index : step.order(underWay(job, step, first)).sequence()) {
        Condition condition = job.condition(first + index);
        if (first + index != but && condition.done() <= fits && !condition.nonconforming()) {
          names.add(job.plan().name(first + index));
          break;
        }
      }
    }
    return names;
  }

  /** The last pass whose band holds the reading; −1 for none. */
  private static int lastThatFits(TightenStep step, TorqueEvent event) {
    int pass = step.passes().size() - 1;
    while (pass >= 0 && step.side(pass, event.torque()) != Side.INSIDE) {
      pass--;
    }
    return pass;
  }

  /** The pass that the group has reached. */
  private static int underWay(JobState job, TightenStep step, int first) {
    int done =
        IntStream.range(first, first + step.positions().size())
            .map(f -> job.condition(f).done())
            .min()
            .orElse(0);
    return Math.min(done, step.passes().size() - 1);
  }
}
