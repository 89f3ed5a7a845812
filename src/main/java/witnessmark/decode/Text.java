package witnessmark.decode;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;

/** Received bytes as text, without ever replacing a byte. */
final class Text {
  private Text() {}

  static String of(byte[] bytes, Charset charset) throws Refusal {
    ByteBuffer in = ByteBuffer.wrap(bytes);
    try {
      return charset
          .newDecoder()
          .onMalformedInput(CodingErrorAction.REPORT)
          .onUnmappableCharacter(CodingErrorAction.REPORT)
          .decode(in)
          .toString();
    } catch (CharacterCodingException e) {
      throw new Refusal(
          "the bytes are not " + charset + " from byte " + (in.position() + 1) + " on");
    }
  }

  static void atMost(byte[] bytes, int longest, String what) throws Refusal {
    if (bytes.length > longest) {
      throw new Refusal(tooLong(what, bytes.length, longest));
    }
  }

  static String tooLong(String what, long length, int longest) {
    return "the " + what + " has " + length + " bytes; at most " + longest + " are allowed";
  }
}
