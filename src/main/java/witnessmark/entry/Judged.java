package witnessmark.entry;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.Optional;
import witnessmark.torque.Angle;
import witnessmark.torque.Digits;
import witnessmark.torque.Verdict;

/**
 * What was decided about a torque event.
 *
 * @param fastener where it was placed
 * @param pass the pass it was judged against
 * @param reason why it was placed there, or nowhere
 * @param alternatives other fasteners it could have been, where the facts left that open
 * @param objections why the reading cannot be relied on
 * @param verdict absent where there is no fastener or the reading could not be judged
 * @param low lowest acceptable torque of the band judged against, as {@code 40.5 N.m}
 * @param high highest acceptable torque
 * @param angleLow smallest acceptable angle in degrees, where a window was judged
 * @param angleHigh largest acceptable angle
 * @param angleTotal degrees turned over all pulls of this pass, where an earlier one ended below
 *     the band or this one did
 * @param atFastener the torque at the fastener, computed from the reading, where an adapter sits
 *     between; as {@code 51.4 N.m}, of at most 9 digits, while the verdict is decided exactly
 * @param rule by which rule the torque was decided; entries of earlier versions do not say: simple
 * @param guardFactor the factor r of the guard band, where the rule is guarded
 * @param guard the guard band w = r·U at this reading, as {@code 0.5 N.m}, of at most 9 digits
 * @param effect what it changed
 * @param undoes stages that are pending again because of it, as {@code step} or {@code step:pass}
 * @param text all of this in a sentence or two
 */
@JsonInclude(JsonInclude.Include.NON_EMPTY)
public record Judged(
    Optional<String> fastener,
    Optional<String> pass,
    Reason reason,
    List<String> alternatives,
    List<Objection> objections,
    Optional<Verdict> verdict,
    Optional<String> low,
    Optional<String> high,
    Optional<String> angleLow,
    Optional<String> angleHigh,
    Optional<Angle> angleTotal,
    Optional<String> atFastener,
    Optional<Rule> rule,
    Optional<Digits> guardFactor,
    Optional<String> guard,
    Effect effect,
    List<String> undoes,
    String text) {
  public Judged {
    alternatives = alternatives == null ? List.of() : List.copyOf(alternatives);
    objections = objections == null ? List.of() : List.copyOf(objections);
    undoes = undoes == null ? List.of() : List.copyOf(undoes);
    if (reason.placed() != fastener.isPresent()) {
      throw new IllegalArgumentException(
          "reason "
              + reason.code()
              + (reason.placed() ? " needs a" : " must have no")
              + " fastener");
    }
  }

  /** The same decision, told so. */
  public Judged withText(String told) {
    return new Judged(
        fastener,
        pass,
        reason,
        alternatives,
        objections,
        verdict,
        low,
        high,
        angleLow,
        angleHigh,
        angleTotal,
        atFastener,
        rule,
        guardFactor,
        guard,
        effect,
        undoes,
        told);
  }

  /**
   * The verdict as others may be told it. A reading in its band that cannot be relied on accepts
   * nothing, so nobody may take it for good.
   */
  public Optional<Verdict> announced() {
    return verdict.filter(v -> v != Verdict.IN_BAND || objections.isEmpty());
  }
}
