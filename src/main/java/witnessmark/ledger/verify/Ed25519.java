package witnessmark.ledger.verify;

import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.PublicKey;
import java.security.Signature;
import java.security.spec.X509EncodedKeySpec;
import java.util.HexFormat;

/** An Ed25519 public key (RFC 8032). */
final class Ed25519 {
  static final int KEY_LENGTH = 32;
  static final int SIGNATURE_LENGTH = 64;
  // SubjectPublicKeyInfo of RFC 8410 up to the 32 key bytes.
  private static final byte[] SPKI = HexFormat.of().parseHex("302a300506032b6570032100");

  private final PublicKey key;

  private Ed25519(PublicKey key) {
    this.key = key;
  }

  /**
   * The key of those bytes, or null when they are none, or one of small order, for which anybody
   * can sign. The JDK's provider asks for neither before it verifies, nor at all.
   */
  static Ed25519 of(byte[] bytes) {
    if (bytes == null || bytes.length != KEY_LENGTH) {
      return null;
    }
    EdPoint point = EdPoint.decode(bytes);
    if (point == null || point.ofSmallOrder()) {
      return null;
    }
    byte[] encoded = new byte[SPKI.length + KEY_LENGTH];
    System.arraycopy(SPKI, 0, encoded, 0, SPKI.length);
    System.arraycopy(bytes, 0, encoded, SPKI.length, KEY_LENGTH);
    try {
      return new Ed25519(
          KeyFactory.getInstance("Ed25519").generatePublic(new X509EncodedKeySpec(encoded)));
    } catch (GeneralSecurityException e) {
      return null;
    }
  }

  /**
   * Whether {@code signature} is this key's over {@code text}; false for any other length than 64.
   */
  boolean signed(byte[] text, byte[] signature) {
    // The JDK 17 provider accepts a valid signature with bytes after it.
    if (signature.length != SIGNATURE_LENGTH) {
      return false;
    }
    try {
      Signature ed25519 = Signature.getInstance("Ed25519");
      ed25519.initVerify(key);
      ed25519.update(text);
      return ed25519.verify(signature);
    } catch (GeneralSecurityException e) {
      // The provider throws for a signature it cannot decode, e.g. S not below the group order.
      return false;
    }
  }
}
