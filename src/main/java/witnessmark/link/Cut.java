package witnessmark.link;

import java.util.Objects;

/**
 * What is known of a message that was too large to be kept in memory.
 *
 * @param head its first bytes, 4096 of them; owned by the record, not to be changed
 * @param length how many bytes it had
 * @param sha256 SHA-256 of all its bytes, lower-case hexadecimal
 */
public record Cut(byte[] head, long length, String sha256) {
  /** How many of the first bytes are kept. */
  public static final int KEPT = 4096;

  public Cut {
    Objects.requireNonNull(head, "head");
    Objects.requireNonNull(sha256, "sha256");
  }
}
