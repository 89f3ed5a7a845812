package witnessmark.ledger;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;

/**
 * The hashes of the log. RFC 6962, section 2.1: leaf = SHA-256(0 ‖ entry), node = SHA-256(1 ‖ left
 * ‖ right).
 */
public final class Hashing {
  private static final ThreadLocal<MessageDigest> SHA256 =
      ThreadLocal.withInitial(
          () -> {
            try {
              return MessageDigest.getInstance("SHA-256");
            } catch (NoSuchAlgorithmException e) {
              throw new IllegalStateException("every Java has SHA-256", e);
            }
          });

  private Hashing() {}

  /** The leaf hash of an entry's exact bytes. */
  public static byte[] leaf(byte[] bytes) {
    MessageDigest sha = SHA256.get();
    sha.update((byte) 0);
    return sha.digest(bytes);
  }

  static byte[] node(byte[] left, byte[] right) {
    MessageDigest sha = SHA256.get();
    sha.update((byte) 1);
    sha.update(left);
    return sha.digest(right);
  }

  /** The link of an entry: SHA-256(link before it ‖ its leaf hash). */
  public static byte[] link(byte[] before, byte[] leaf) {
    MessageDigest sha = SHA256.get();
    sha.update(before);
    return sha.digest(leaf);
  }

  static byte[] empty() {
    return SHA256.get().digest();
  }
}
