package witnessmark.procedure;

import java.util.Objects;

/**
 * Something about a procedure that is allowed but that somebody should look at before release.
 *
 * @param step the id of the step it is about
 * @param doubt what it is about
 * @param sentence what was found, without the step's name; never proposes a torque
 */
public record Finding(String step, Doubt doubt, String sentence) {
  public Finding {
    Objects.requireNonNull(step, "step");
    Objects.requireNonNull(doubt, "doubt");
    Objects.requireNonNull(sentence, "sentence");
  }

  /** By which it is acknowledged, e.g. {@code band-wide@pivot}. */
  public String key() {
    return doubt.code() + "@" + step;
  }

  /** {@code band-wide@pivot: sentence}. */
  @Override
  public String toString() {
    return key() + ": " + sentence;
  }
}
