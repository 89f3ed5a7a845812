package witnessmark.judge;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import witnessmark.entry.Objection;
import witnessmark.procedure.Pass;
import witnessmark.procedure.Stage;
import witnessmark.procedure.TightenStep;
import witnessmark.torque.Direction;
import witnessmark.torque.TorqueEvent;
import witnessmark.wrench.Fitness;
import witnessmark.wrench.Wrench;

/** What speaks against relying on a reading. */
final class Objections {
  private Objections() {}

  /**
   * @param own whether it came by a way by which its wrench may report
   * @param moment when it happened
   */
  static List<Objection> of(
      TorqueEvent event,
      Optional<Wrench> wrench,
      boolean own,
      Instant moment,
      Optional<Stage> stage) {
    List<Objection> found = new ArrayList<>();
    if (wrench.isEmpty()) {
      found.add(Objection.WRENCH_NOT_ENROLLED);
    } else {
      if (!wrench.get().calibratedAt(moment)) {
        found.add(Objection.CALIBRATION_NOT_IN_FORCE);
      }
      if (event.direction() == Direction.CW && !wrench.get().covers(event.torque())) {
        found.add(Objection.OUTSIDE_WRENCH_RANGE);
      }
    }
    if (!own) {
      found.add(Objection.NOT_FROM_ITS_SOURCE);
    }
    stage.ifPresent(s -> forStep(event, wrench, s, found));
    return found;
  }

  private static void forStep(
      TorqueEvent event, Optional<Wrench> wrench, Stage stage, List<Objection> found) {
    TightenStep step = (TightenStep) stage.step();
    if (!step.wrenches().isEmpty() && !step.wrenches().contains(event.wrench())) {
      found.add(Objection.WRENCH_NOT_FOR_THIS_STEP);
    }
    if (event.direction() == Direction.CCW) {
      return;
    }
    Pass pass = step.passes().get(stage.pass());
    wrench.ifPresent(w -> found.addAll(Fitness.standing(w, pass, step.care().tool())));
    if (event.angle().isEmpty() && pass.angle().isPresent()) {
      found.add(Objection.ANGLE_MISSING);
    }
  }
}
