package wrenchsim.shop;

import java.util.Optional;
import wrenchsim.truth.Happening.Act;
import wrenchsim.wire.ExpectMessage;
import wrenchsim.wire.Expected;

/**
 * One turn of a wrench that a person is about to make.
 *
 * @param act {@link Act#TIGHTEN} or {@link Act#LOOSEN}
 * @param task what the person believes to be doing
 * @param place the fastener the wrench is really on
 * @param like the band that is aimed at
 * @param mistake what goes wrong
 */
record Plan(Act act, Task task, String place, Expected like, Optional<Mistake> mistake) {

  /** Tightens at a place, with the band of what is due. */
  static Plan tighten(Task task, String place, Optional<Mistake> mistake) {
    return new Plan(Act.TIGHTEN, task, place, task.due(), mistake);
  }

  /** Undoes what is at a place. */
  static Plan loosen(Task task, String place, Optional<Mistake> mistake) {
    return new Plan(Act.LOOSEN, task, place, task.due(), mistake);
  }

  /** The same turn, taken for what is expected by now. */
  Plan whileExpecting(ExpectMessage now) {
    return new Plan(act, task.whileExpecting(now), place, like, mistake);
  }

  boolean is(Mistake.Kind kind) {
    return mistake.isPresent() && mistake.get().kind() == kind;
  }
}
