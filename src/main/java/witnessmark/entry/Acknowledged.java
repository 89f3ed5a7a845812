package witnessmark.entry;

import java.util.Objects;

/**
 * A finding about a procedure that somebody has looked at before releasing it.
 *
 * @param finding its code and the step it is about, e.g. {@code band-wide@pivot}
 * @param because why it is all right
 */
public record Acknowledged(String finding, String because) {
  public Acknowledged {
    Objects.requireNonNull(finding, "finding");
    Objects.requireNonNull(because, "because");
  }
}
