package witnessmark.decode;

import java.util.Arrays;
import java.util.HexFormat;

/** A run of bytes that cannot be changed; equal when the bytes are. */
public final class Bytes {
  private final byte[] bytes;

  private Bytes(byte[] bytes) {
    this.bytes = bytes;
  }

  public static Bytes of(byte[] bytes) {
    return new Bytes(bytes.clone());
  }

  public int size() {
    return bytes.length;
  }

  public byte[] toArray() {
    return bytes.clone();
  }

  /** Whether the other run stands somewhere in this one. */
  boolean contains(Bytes other) {
    for (int at = 0; at + other.size() <= size(); at++) {
      if (Arrays.equals(bytes, at, at + other.size(), other.bytes, 0, other.size())) {
        return true;
      }
    }
    return false;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Bytes b && Arrays.equals(bytes, b.bytes);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(bytes);
  }

  /** Hexadecimal digits, two a byte. */
  @Override
  public String toString() {
    return HexFormat.of().formatHex(bytes);
  }
}
