package witnessmark.tamper;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;

/** The links of docs/ledger-format.md, which anybody can make. */
final class Links {
  private Links() {}

  static byte[] after(byte[] link, byte[] bytes) {
    return sha(link, sha(new byte[] {0}, bytes));
  }

  private static byte[] sha(byte[]... parts) {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      for (byte[] part : parts) {
        digest.update(part);
      }
      return digest.digest();
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
