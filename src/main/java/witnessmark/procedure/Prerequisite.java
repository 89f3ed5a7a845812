package witnessmark.procedure;

import java.util.Optional;

/**
 * Something that must be complete first: a whole step, or one pass of a tighten step.
 *
 * @param step the step's id
 * @param pass the pass's name; empty means the whole step
 */
public record Prerequisite(String step, Optional<String> pass) {
  /** Reads {@code step} or {@code step:pass}. */
  public static Prerequisite parse(String text) {
    int colon = text.indexOf(':');
    return colon < 0
        ? new Prerequisite(text, Optional.empty())
        : new Prerequisite(text.substring(0, colon), Optional.of(text.substring(colon + 1)));
  }

  @Override
  public String toString() {
    return step + pass.map(p -> ":" + p).orElse("");
  }
}
