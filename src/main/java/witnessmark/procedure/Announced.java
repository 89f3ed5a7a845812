package witnessmark.procedure;

import java.util.Objects;

/**
 * What the record will show of a mistake in one pass of a step.
 *
 * @param sentence why, and what would reveal it where it may stay unseen
 */
public record Announced(
    Mistake mistake, String step, String pass, Visibility visibility, String sentence) {
  public Announced {
    Objects.requireNonNull(mistake, "mistake");
    Objects.requireNonNull(visibility, "visibility");
  }
}
