package witnessmark.ledger.verify;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.HexFormat;

/**
 * A C2SP signed-note verifier key of type Ed25519: {@code NAME+KEYID+BASE64}.
 *
 * @see <a href="https://c2sp.org/signed-note">c2sp.org/signed-note</a>
 */
public final class VerifierKey {
  static final int SIGNATURE_LENGTH = Ed25519.SIGNATURE_LENGTH;
  private static final byte ED25519 = 1;
  private static final int KEY_LENGTH = Ed25519.KEY_LENGTH;

  private final String line;
  private final String name;
  private final String id;
  private final Ed25519 key;

  private VerifierKey(String line, String name, String id, Ed25519 key) {
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

  private static Ed25519 publicKey(String text, byte[] typed) {
    Ed25519 key = Ed25519.of(Arrays.copyOfRange(typed, 1, typed.length));
    if (key == null) {
      throw bad(text, "its key is " + PersonSignature.NO_KEY);
    }
    return key;
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
    return key.signed(text, signature);
  }
}
