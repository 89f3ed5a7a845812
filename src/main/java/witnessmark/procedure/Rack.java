package witnessmark.procedure;

import java.util.Map;

/**
 * The wrenches at hand.
 *
 * @param abilities what each shows, by serial number
 */
public record Rack(Map<String, Ability> abilities) {
  /** Nothing is known of any. */
  public static final Rack UNKNOWN = new Rack(Map.of());

  public Rack {
    abilities = Map.copyOf(abilities);
  }

  /**
   * What every wrench shows that may be used for a pass: the weakest decides, and torque only where
   * one is not known. A pass with a window takes no reading without an angle.
   */
  Ability at(TightenStep step, Pass pass) {
    Ability common =
        step.wrenches().isEmpty()
            ? abilities.values().stream().reduce(Ability::common).orElse(Ability.TORQUE_ONLY)
            : step.wrenches().stream()
                .map(w -> abilities.getOrDefault(w, Ability.TORQUE_ONLY))
                .reduce(Ability::common)
                .orElseThrow();
    return pass.angle().isPresent() ? common.and(Ability.ANGLE) : common;
  }
}
