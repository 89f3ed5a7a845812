package witnessmark.toml;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** The text of an input file, which is UTF-8. */
public final class Utf8 {
  private Utf8() {}

  /**
   * The bytes' text.
   *
   * @param file the name to show in the fault
   * @throws FaultsException with the place of the first byte that is not UTF-8
   */
  public static String text(String file, byte[] bytes) {
    CharsetDecoder decoder = StandardCharsets.UTF_8.newDecoder();
    CharBuffer decoded = CharBuffer.allocate(bytes.length);
    CoderResult result = decoder.decode(ByteBuffer.wrap(bytes), decoded, true);
    String text = decoded.flip().toString();
    if (result.isError()) {
      throw new FaultsException(List.of(fault(file, text)));
    }
    return text;
  }

  /**
   * @param before what could be read
   */
  private static Fault fault(String file, String before) {
    int lineStart = before.lastIndexOf('\n') + 1;
    int line = 1 + (int) before.chars().filter(c -> c == '\n').count();
    int column = 1 + before.codePointCount(lineStart, before.length());
    return new Fault(file, line, column, "the file is not UTF-8 from here on", "save it as UTF-8");
  }
}
