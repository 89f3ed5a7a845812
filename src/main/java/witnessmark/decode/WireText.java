package witnessmark.decode;

import java.nio.charset.Charset;

/** A profile's text as it goes over the wire. */
final class WireText {
  private WireText() {}

  /**
   * The text's bytes.
   *
   * @throws IllegalArgumentException when the charset has not all its characters
   */
  static Bytes bytes(String text, Charset charset) {
    if (!charset.newEncoder().canEncode(text)) {
      throw new IllegalArgumentException("\"" + text + "\" cannot be written in " + charset);
    }
    return Bytes.of(text.getBytes(charset));
  }
}
