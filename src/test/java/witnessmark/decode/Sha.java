package witnessmark.decode;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;

/** SHA-256, and where a sample's bytes stand, computed apart from the code under test. */
final class Sha {
  private Sha() {}

  static String of(byte[] bytes) {
    try {
      byte[] digest = MessageDigest.getInstance("SHA-256").digest(bytes);
      StringBuilder hex = new StringBuilder();
      for (byte b : digest) {
        hex.append("0123456789abcdef".charAt(b >> 4 & 15))
            .append("0123456789abcdef".charAt(b & 15));
      }
      return hex.toString();
    } catch (NoSuchAlgorithmException e) {
      throw new AssertionError(e);
    }
  }

  /** Whether the sample describes exactly these bytes. */
  static boolean describes(Sample sample, byte[] bytes) {
    return sample.length() == bytes.length
        && Arrays.equals(sample.head(), Arrays.copyOf(bytes, Math.min(bytes.length, 4096)))
        && sample.sha256().equals(of(bytes));
  }

  /** Whether the sample describes some run of these bytes. */
  static boolean describesPart(Sample sample, byte[] bytes) {
    int length = (int) sample.length();
    byte[] head = sample.head();
    for (int at = 0; at + length <= bytes.length; at++) {
      boolean begins = Arrays.equals(bytes, at, at + head.length, head, 0, head.length);
      if (begins && describes(sample, Arrays.copyOfRange(bytes, at, at + length))) {
        return true;
      }
    }
    return false;
  }
}
