package witnessmark.sight;

import java.util.Map;
import witnessmark.procedure.Pass;
import witnessmark.procedure.TightenStep;

/** The wrenches at hand. */
@FunctionalInterface
public interface Rack {
  /** What every wrench shows that may be used for a pass: the weakest decides. */
  Ability at(TightenStep step, Pass pass);

  /** What any wrench shows that a pass takes: one with a window takes no reading without angle. */
  static Ability least(Pass pass) {
    return pass.angle().isPresent() ? Ability.ANGLE : Ability.TORQUE_ONLY;
  }

  /**
   * Wrenches by their serial numbers; torque only is expected of one that is not among them.
   *
   * @param abilities empty where nothing is known of any
   */
  static Rack of(Map<String, Ability> abilities) {
    return (step, pass) ->
        (step.wrenches().isEmpty()
                ? abilities.values().stream()
                : step.wrenches().stream().map(w -> abilities.getOrDefault(w, Ability.TORQUE_ONLY)))
            .reduce(Ability::common)
            .orElse(Ability.TORQUE_ONLY)
            .and(least(pass));
  }
}
