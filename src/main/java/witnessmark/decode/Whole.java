package witnessmark.decode;

import java.util.Arrays;

/**
 * A complete frame.
 *
 * @param bytes its content without start and end; copied in and out
 */
public record Whole(byte[] bytes) implements Frame {
  public Whole {
    bytes = bytes.clone();
  }

  @Override
  public byte[] bytes() {
    return bytes.clone();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Whole w && Arrays.equals(bytes, w.bytes);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(bytes);
  }

  @Override
  public String toString() {
    return "Whole[" + Bytes.of(bytes) + "]";
  }
}
