package witnessmark.ledger.verify;

import java.util.Base64;

/** Standard base64 with padding, read so that each array of bytes has exactly one text. */
final class ExactBase64 {
  private ExactBase64() {}

  /** The bytes, or null when the text is not the one base64 text of any bytes. */
  static byte[] decode(String text) {
    try {
      byte[] bytes = Base64.getDecoder().decode(text);
      // The JDK ignores the unused bits of the last digit: another text, the same bytes.
      return Base64.getEncoder().encodeToString(bytes).equals(text) ? bytes : null;
    } catch (IllegalArgumentException e) {
      return null;
    }
  }
}
