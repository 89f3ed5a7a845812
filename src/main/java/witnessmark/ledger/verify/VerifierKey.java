package witnessmark.ledger.verify;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.MessageDigest;
import java.security.PublicKey;
import java.security.Signature;
import java.security.spec.X509EncodedKeySpec;
import java.util.HexFormat;

/**
 * A C2SP signed-note verifier key of type Ed25519: {@code NAME+KEYID+BASE64}.
 *
 * @see <a href="https://c2sp.org/signed-note">c2sp.org/signed-note</a>
 */
public final class VerifierKey {
  static final int SIGNATURE_LENGTH = 64;
  private static final byte ED25519 = 1;
  private static final int KEY_LENGTH = 32;
  // SubjectPublicKeyInfo of RFC 8410 up to the 32 key bytes.
  private static final byte[] SPKI = HexFormat.of().parseHex("302a300506032b6570032100");

  private final String line;
  private final String name;
  private final String id;
  private final PublicKey key;

  private VerifierKey(String line, String name, String id, PublicKey key) {
    this.line = line;
    this.name = name;
    this.id = id;
    this.key = key;
  }

  /**
   * Reads a key as it stands in {@code ledger.pub}; space around it is ignored.
   *
   * @throws IllegalArgumentException when it is not such a key
   */
  public static VerifierKey parse(String text) {
    // The base64 may hold a + of its own.
    String[] parts = text.strip().split("\\+", 3);
    if (parts.length != 3
        || parts[0].isEmpty()
        || parts[0].chars().anyMatch(Character::isWhitespace)
        || !parts[1].matches("[0-9a-f]{8}")) {
      throw bad(text, "it has another form");
    }
    byte[] typed = ExactBase64.decode(parts[2]);
    if (typed == null || typed.length != 1 + KEY_LENGTH || typed[0] != ED25519) {
      throw bad(text, "its last part is not the base64 of byte 1 and a 32-byte Ed25519 key");
    }
    String id = idOf(parts[0], typed);
    if (!id.equals(parts[1])) {
      throw bad(text, "its key id is " + parts[1] + " but its name and key give " + id);
    }
    return new VerifierKey(text.strip(), parts[0], id, publicKey(text, typed));
  }

  private static IllegalArgumentException bad(String text, String why) {
    return new IllegalArgumentException(
        "verifier key: expected NAME+KEYID+BASE64 as in ledger.pub, found \""
            + text.strip()
            + "\": "
            + why
            + "; use the key as it was published");
  }

  private static String idOf(String name, byte[] typed) {
    try {
      MessageDigest sha256 = MessageDigest.getInstance("SHA-256");
      sha256.update((name + "\n").getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(sha256.digest(typed), 0, 4);
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }

  private static PublicKey publicKey(String text, byte[] typed) {
    byte[] encoded = new byte[SPKI.length + KEY_LENGTH];
    System.arraycopy(SPKI, 0, encoded, 0, SPKI.length);
    System.arraycopy(typed, 1, encoded, SPKI.length, KEY_LENGTH);
    try {
      return KeyFactory.getInstance("Ed25519").generatePublic(new X509EncodedKeySpec(encoded));
    } catch (GeneralSecurityException e) {
      throw bad(text, "its key is no Ed25519 public key");
    }
  }

  /** The key as it stands in {@code ledger.pub}, which is the one text of it. */
  String line() {
    return line;
  }

  boolean same(VerifierKey other) {
    return line.equals(other.line);
  }

  /** The key's name, which is also the origin of the checkpoints it signs. */
  public String name() {
    return name;
  }

  /** The key id, eight hexadecimal digits. */
  public String id() {
    return id;
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
