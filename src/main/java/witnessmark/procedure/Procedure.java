package witnessmark.procedure;

import java.util.List;
import java.util.Optional;

/**
 * A revision-controlled document that lists the steps for one kind of unit.
 *
 * <p>Built only by {@link ProcedureFile}, which has checked that ids are unique and references
 * exist.
 *
 * @param id e.g. {@code RAM-210}
 * @param revision e.g. {@code C}
 * @param title for people
 * @param unitPattern linear-time pattern that a unit's number must match as a whole
 * @param steps in file order, at least one
 */
public record Procedure(
    String id, String revision, String title, Optional<String> unitPattern, List<Step> steps) {
  public Procedure {
    steps = List.copyOf(steps);
  }

  /** The step with that id. */
  public Optional<Step> step(String stepId) {
    return steps.stream().filter(s -> s.id().equals(stepId)).findFirst();
  }

  /** Whether the unit's number is of the form this procedure is meant for. */
  public boolean accepts(String unit) {
    return unitPattern.map(p -> new UnitPattern(p).matches(unit)).orElse(true);
  }
}
