package witnessmark.decode;

import java.util.Optional;

/**
 * What to answer a wrench.
 *
 * @param accepted to an event, once it is on record
 * @param refused to anything else; without placeholders, since nothing is known of it
 * @param waiting at once, while nothing can be recorded, to what waits for that; like a refusal
 */
public record Reply(
    Optional<ReplyText> accepted, Optional<ReplyText> refused, Optional<ReplyText> waiting) {
  /** No answers. */
  public static final Reply NONE = new Reply(Optional.empty(), Optional.empty(), Optional.empty());

  /**
   * @throws IllegalArgumentException when one that knows nothing has a placeholder
   */
  public Reply {
    plain(refused);
    plain(waiting);
  }

  private static void plain(Optional<ReplyText> text) {
    if (text.isPresent() && !text.get().words().isEmpty()) {
      throw new IllegalArgumentException("a refusal knows nothing to fill in");
    }
  }
}
