package witnessmark.decode;

import java.util.Objects;

/**
 * Bytes that are no frame: noise, a frame that was cut off, or one longer than allowed.
 *
 * @param reason what is wrong, one line
 * @param sample the bytes as they came, the frame's own start and end included
 */
public record Broken(String reason, Sample sample) implements Frame {
  public Broken {
    Reason.check(reason);
    Objects.requireNonNull(sample, "sample");
  }
}
