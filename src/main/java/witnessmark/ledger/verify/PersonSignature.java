package witnessmark.ledger.verify;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * A person's signature under an entry, after docs/ledger-format.md: over the log's name, the
 * entry's number, and the entry's bytes without the signature, which is their last member.
 */
final class PersonSignature {
  private static final String FORM = "witnessmark.local/decision/1";

  /** What is said of a key that is none. */
  static final String NO_KEY = "no Ed25519 public key that only its holder can sign for";

  private PersonSignature() {}

  /**
   * Checks it.
   *
   * @param publicKey the key's 32 bytes in base64
   * @return null when it is right, else what is wrong
   */
  static String fault(String origin, long n, byte[] entry, String signature, String publicKey) {
    byte[] end = (",\"signature\":\"" + signature + "\"}").getBytes(StandardCharsets.UTF_8);
    int cut = entry.length - end.length;
    if (cut < 0 || !Arrays.equals(entry, cut, entry.length, end, 0, end.length)) {
      return "its signature does not stand as its last member, as it was written";
    }
    byte[] made = ExactBase64.decode(signature);
    Ed25519 key = Ed25519.of(ExactBase64.decode(publicKey));
    if (made == null) {
      return "its signature is not in base64 of its length";
    }
    if (key == null) {
      return "the key is " + NO_KEY;
    }
    byte[] head = (FORM + "\n" + origin + "\n" + n + "\n").getBytes(StandardCharsets.UTF_8);
    byte[] text = Arrays.copyOf(head, head.length + cut + 1);
    System.arraycopy(entry, 0, text, head.length, cut);
    text[text.length - 1] = '}';
    return key.signed(text, made)
        ? null
        : "its signature is not that of the key over this entry, at this place of this log";
  }
}
