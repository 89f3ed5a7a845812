package witnessmark.decode;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.regex.Pattern;

/**
 * Bytes that were refused, in bounded size: their beginning, and enough to recognise all of them.
 *
 * @param head the first 4096 bytes, or all of them where they are fewer; copied in and out
 * @param length how many bytes there were
 * @param sha256 SHA-256 of all the bytes, lower-case hexadecimal
 */
public record Sample(byte[] head, long length, String sha256) {
  /** How many bytes are kept at most. */
  public static final int KEPT = 4096;

  private static final Pattern HASH = Pattern.compile("[0-9a-f]{64}");

  /**
   * @throws IllegalArgumentException when the head does not fit the length, or the hash its form
   */
  public Sample {
    if (head.length != Math.min(length, KEPT)) {
      throw new IllegalArgumentException(
          "a sample of " + length + " bytes has a head of " + head.length + " bytes");
    }
    if (!HASH.matcher(sha256).matches()) {
      throw new IllegalArgumentException("a SHA-256 is 64 lower-case hexadecimal digits");
    }
    head = head.clone();
  }

  /** The sample of all these bytes. */
  public static Sample of(byte[] bytes) {
    byte[] head = Arrays.copyOf(bytes, Math.min(bytes.length, KEPT));
    return new Sample(head, bytes.length, hex(newDigest().digest(bytes)));
  }

  static MessageDigest newDigest() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  static String hex(byte[] bytes) {
    return HexFormat.of().formatHex(bytes);
  }

  @Override
  public byte[] head() {
    return head.clone();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Sample s
        && length == s.length
        && sha256.equals(s.sha256)
        && Arrays.equals(head, s.head);
  }

  @Override
  public int hashCode() {
    return sha256.hashCode();
  }

  @Override
  public String toString() {
    return length + " bytes, SHA-256 " + sha256;
  }
}
