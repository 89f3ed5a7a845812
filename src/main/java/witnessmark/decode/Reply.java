package witnessmark.decode;

import java.util.Optional;

/**
 * What to answer a wrench once the record is on disk.
 *
 * @param accepted to an event
 * @param refused to anything else; without placeholders, since nothing is known of it
 */
public record Reply(Optional<ReplyText> accepted, Optional<ReplyText> refused) {
  /** No answers. */
  public static final Reply NONE = new Reply(Optional.empty(), Optional.empty());

  /**
   * @throws IllegalArgumentException when the refusal has a placeholder
   */
  public Reply {
    if (refused.isPresent() && !refused.get().words().isEmpty()) {
      throw new IllegalArgumentException("a refusal knows nothing to fill in");
    }
  }
}
