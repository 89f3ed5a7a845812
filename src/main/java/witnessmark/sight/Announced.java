package witnessmark.sight;

import java.util.Objects;

/**
 * What the record will show of a mistake in one pass of a step.
 *
 * @param pattern why, and what would reveal it where it may stay unseen; {@code {}} stands for the
 *     other
 * @param other the one beside this that it is about, e.g. {@code "pivot" (final)}, or empty
 */
public record Announced(
    Mistake mistake,
    String step,
    String pass,
    Visibility visibility,
    String pattern,
    String other) {
  public Announced {
    Objects.requireNonNull(mistake, "mistake");
    Objects.requireNonNull(visibility, "visibility");
    if (pattern.contains("{}") == other.isEmpty()) {
      throw new IllegalArgumentException("the other is to be named in \"" + pattern + "\" or not");
    }
  }

  /** The reason, with the other named in it. */
  public String sentence() {
    return sentence(other);
  }

  /** The reason, with these words for the other. */
  public String sentence(String words) {
    return pattern.replace("{}", words);
  }
}
