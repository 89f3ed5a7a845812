package witnessmark.ledger.verify;

import java.security.GeneralSecurityException;
import java.security.MessageDigest;

/** SHA-256 over parts, for tests; separate from the hashing that is tested. */
final class Sha {
  private Sha() {}

  static byte[] of(byte[]... parts) {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      for (byte[] part : parts) {
        digest.update(part);
      }
      return digest.digest();
    } catch (GeneralSecurityException e) {
      throw new AssertionError(e);
    }
  }
}
