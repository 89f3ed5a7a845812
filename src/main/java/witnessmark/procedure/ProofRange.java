package witnessmark.procedure;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Between which torques a bolt reaches its proof load, or three quarters of it, as friction has it:
 * to hold a typed torque against, never one to use.
 *
 * @param step the id of a step with that bolt
 * @param bolt thread and class as the step gives them
 * @param from newton metres at nut factor 0.10 and 75 % of proof load
 * @param low newton metres at nut factor 0.10 and proof load
 * @param high newton metres at nut factor 0.30 and proof load
 */
public record ProofRange(String step, String bolt, double from, double low, double high) {
  /** The ranges of all steps whose bolt is known, in file order. */
  public static List<ProofRange> of(Procedure procedure) {
    return procedure.steps().stream()
        .filter(TightenStep.class::isInstance)
        .map(TightenStep.class::cast)
        .flatMap(ProofRange::of)
        .toList();
  }

  private static Stream<ProofRange> of(TightenStep step) {
    Optional<String> thread = step.joint().thread();
    Optional<String> propertyClass = step.joint().propertyClass();
    if (thread.isEmpty() || propertyClass.isEmpty()) {
      return Stream.empty();
    }
    return Bolt.of(thread.get(), propertyClass.get()).stream()
        .map(
            b ->
                new ProofRange(
                    step.id(),
                    thread.get() + " " + propertyClass.get(),
                    Slips.USUAL * b.torqueAtProofLoad(Slips.LOW_FRICTION),
                    b.torqueAtProofLoad(Slips.LOW_FRICTION),
                    b.torqueAtProofLoad(Slips.HIGH_FRICTION)));
  }

  /** Where the proof load is reached, e.g. {@code 17 to 51 N.m}. */
  public String whole() {
    return digits(low) + " to " + digits(high) + " N.m";
  }

  /** Where three quarters of it are. */
  public String usual() {
    return digits(from) + " to " + digits(Slips.USUAL * high) + " N.m";
  }

  /** {@code M8x1.25 8.8 reaches proof load between 17 and 51 N.m, 75 % of it between ...}. */
  public String sentence() {
    return bolt
        + " reaches proof load between "
        + digits(low)
        + " and "
        + digits(high)
        + " N.m, 75 % of it between "
        + digits(from)
        + " and "
        + digits(Slips.USUAL * high)
        + " N.m";
  }

  private static String digits(double newtonMetres) {
    return String.format(Locale.ROOT, newtonMetres < 10 ? "%.1f" : "%.0f", newtonMetres);
  }
}
