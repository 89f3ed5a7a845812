package witnessmark.decode;

import java.util.Objects;

/**
 * Bytes that are no event and no scan.
 *
 * @param reason what is wrong and what is allowed: one line of 1 to 500 printable characters
 * @param sample the bytes
 */
public record Malformed(String reason, Sample sample) implements Decoded {
  /**
   * @throws IllegalArgumentException when the reason is not one such line
   */
  public Malformed {
    Reason.check(reason);
    Objects.requireNonNull(sample, "sample");
  }
}
