package witnessmark.match;

import witnessmark.procedure.Pass;
import witnessmark.procedure.Stage;
import witnessmark.procedure.TightenStep;
import witnessmark.torque.Side;
import witnessmark.torque.Torque;

/** What a tighten stage asks for. */
final class Bands {
  private Bands() {}

  static Pass pass(Stage stage) {
    return step(stage).passes().get(stage.pass());
  }

  static TightenStep step(Stage stage) {
    return (TightenStep) stage.step();
  }

  static boolean allows(Stage stage, String wrench) {
    return allows(step(stage), wrench);
  }

  static boolean allows(TightenStep step, String wrench) {
    return step.wrenches().isEmpty() || step.wrenches().contains(wrench);
  }

  /** Where the torque that a reading means at a fastener lies beside the band of each pass. */
  static Side[] sides(TightenStep step, Torque reading) {
    Side[] sides = new Side[step.passes().size()];
    for (int pass = 0; pass < sides.length; pass++) {
      sides[pass] = step.side(pass, reading);
    }
    return sides;
  }

  /** Where the torque that a reading means at the fastener lies beside the stage's band. */
  static Side side(Stage stage, Torque reading) {
    return step(stage).side(stage.pass(), reading);
  }
}
