package witnessmark.trial;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import witnessmark.procedure.Pass;
import witnessmark.procedure.Procedure;
import witnessmark.procedure.Stage;
import witnessmark.procedure.Stages;
import witnessmark.procedure.TightenStep;
import wrenchsim.shop.Sheets;
import wrenchsim.wire.Expected;

/** What people know of a procedure before its first job. */
final class Known {
  private Known() {}

  static Sheets sheets(Procedure procedure) {
    List<Expected> passes = new ArrayList<>();
    for (Stage stage : Stages.of(procedure)) {
      if (stage.step() instanceof TightenStep step) {
        step.order().sequence().forEach(i -> passes.add(pass(step, i, stage.pass())));
      }
    }
    return new Sheets().give(procedure.id() + " " + procedure.revision(), passes);
  }

  private static Expected pass(TightenStep step, int index, int number) {
    Pass pass = step.passes().get(number);
    return new Expected(
        step.fastener(index),
        pass.name(),
        pass.aim().doubleValue(),
        pass.band().low().newtonMetres().doubleValue(),
        pass.band().high().newtonMetres().doubleValue(),
        Optional.empty(),
        step.wrenches());
  }
}
