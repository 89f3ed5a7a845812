package witnessmark.match;

import witnessmark.procedure.Stage;
import witnessmark.procedure.TightenStep;
import witnessmark.torque.Band;

/** The band of a tighten stage. */
final class Bands {
  private Bands() {}

  static Band of(Stage stage) {
    return ((TightenStep) stage.step()).passes().get(stage.pass()).band();
  }
}
