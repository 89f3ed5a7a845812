package witnessmark.match;

import witnessmark.procedure.Pass;
import witnessmark.procedure.Stage;
import witnessmark.procedure.TightenStep;
import witnessmark.torque.Band;

/** What a tighten stage asks for. */
final class Bands {
  private Bands() {}

  static Band of(Stage stage) {
    return pass(stage).band();
  }

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
}
