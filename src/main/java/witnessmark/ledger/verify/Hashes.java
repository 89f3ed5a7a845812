package witnessmark.ledger.verify;

import java.security.DigestException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;

/** The ledger's three hashes, written into arrays the caller keeps. Not safe for two threads. */
final class Hashes {
  static final int LENGTH = 32;

  private final MessageDigest sha256;

  Hashes() {
    try {
      sha256 = MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }

  /** RFC 6962 2.1: SHA-256 of byte 0 and the leaf's data. */
  void leaf(byte[] data, byte[] into) {
    sha256.update((byte) 0);
    sha256.update(data, 0, data.length);
    finish(into);
  }

  /** RFC 6962 2.1: SHA-256 of byte 1 and the two children. */
  void node(byte[] left, byte[] right, byte[] into) {
    sha256.update((byte) 1);
    sha256.update(left, 0, LENGTH);
    sha256.update(right, 0, LENGTH);
    finish(into);
  }

  /** SHA-256 of the link before and the leaf hash. */
  void link(byte[] before, byte[] leaf, byte[] into) {
    sha256.update(before, 0, LENGTH);
    sha256.update(leaf, 0, LENGTH);
    finish(into);
  }

  /** SHA-256 of nothing, the root of an empty tree. */
  byte[] empty() {
    return sha256.digest();
  }

  private void finish(byte[] into) {
    try {
      sha256.digest(into, 0, LENGTH);
    } catch (DigestException e) {
      throw new IllegalStateException("a SHA-256 has " + LENGTH + " bytes", e);
    }
  }
}
