package witnessmark.match;

import witnessmark.procedure.Stage;
import witnessmark.procedure.TightenStep;
import witnessmark.torque.Side;
import witnessmark.torque.Torque;

/** The band of a tighten stage. */
final class Bands {
  private Bands() {}

  /** Where the torque that a reading means at the fastener lies beside the stage's band. */
  static Side side(Stage stage, Torque reading) {
    return ((TightenStep) stage.step()).side(stage.pass(), reading);
  }
}
