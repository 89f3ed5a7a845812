package witnessmark.badge;

import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.PublicKey;
import java.security.Signature;
import java.security.spec.X509EncodedKeySpec;
import java.util.Base64;
import java.util.HexFormat;

/**
 * The public half of a person's Ed25519 key pair (RFC 8032).
 *
 * @param base64 its 32 bytes in base64
 */
public record PublicHalf(String base64) {
  private static final int KEY = 32;
  private static final int SIGNATURE = 64;

  /** SubjectPublicKeyInfo of RFC 8410 up to the key's bytes. */
  private static final byte[] HEAD = HexFormat.of().parseHex("302a300506032b6570032100");

  private static final String LABEL = "PUBLIC KEY";

  /**
   * @throws IllegalArgumentException when it is no Ed25519 public key
   */
  public PublicHalf {
    key(base64);
  }

  static PublicHalf of(PublicKey key) {
    byte[] encoded = key.getEncoded();
    byte[] bytes = java.util.Arrays.copyOfRange(encoded, HEAD.length, encoded.length);
    return new PublicHalf(Base64.getEncoder().encodeToString(bytes));
  }

  /**
   * Reads a PEM file with a SubjectPublicKeyInfo.
   *
   * @throws IllegalArgumentException that says why it is none
   */
  public static PublicHalf ofPem(String pem) {
    byte[] encoded = Pem.read(LABEL, pem);
    if (encoded.length != HEAD.length + KEY
        || !java.util.Arrays.equals(encoded, 0, HEAD.length, HEAD, 0, HEAD.length)) {
      throw new IllegalArgumentException("it is no Ed25519 public key");
    }
    byte[] bytes = java.util.Arrays.copyOfRange(encoded, HEAD.length, encoded.length);
    return new PublicHalf(Base64.getEncoder().encodeToString(bytes));
  }

  /** A PEM file with a SubjectPublicKeyInfo. */
  public String pem() {
    return Pem.write(LABEL, key(base64).getEncoded());
  }

  /** Whether the signature is that of the private half over the text. */
  public boolean signed(byte[] text, byte[] signature) {
    try {
      Signature ed25519 = Signature.getInstance("Ed25519");
      ed25519.initVerify(key(base64));
      ed25519.update(text);
      return signature.length == SIGNATURE && ed25519.verify(signature);
    } catch (GeneralSecurityException e) {
      return false;
    }
  }

  private static PublicKey key(String base64) {
    byte[] bytes = Base64.getDecoder().decode(base64);
    if (bytes.length != KEY || !Base64.getEncoder().encodeToString(bytes).equals(base64)) {
      throw new IllegalArgumentException(
          "\"" + base64 + "\" is no Ed25519 public key: the base64 of 32 bytes is one");
    }
    if (!Curve.holds(bytes)) {
      throw new IllegalArgumentException(
          "\"" + base64 + "\" is no Ed25519 public key that only its holder can sign for");
    }
    byte[] encoded = new byte[HEAD.length + KEY];
    System.arraycopy(HEAD, 0, encoded, 0, HEAD.length);
    System.arraycopy(bytes, 0, encoded, HEAD.length, KEY);
    try {
      return KeyFactory.getInstance("Ed25519").generatePublic(new X509EncodedKeySpec(encoded));
    } catch (GeneralSecurityException e) {
      throw new IllegalArgumentException("\"" + base64 + "\" is no Ed25519 public key", e);
    }
  }
}
