package witnessmark.ledger.verify;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** Goes over the bytes of a trace row, one value of {@link RawLedger#traces}. */
final class RowBytes {
  /** U+001E, which stands before every field. */
  static final int LEAD = 0x1e;

  /** U+001F, which stands between all parts. */
  static final int BETWEEN = 0x1f;

  private final byte[] row;
  private int at;

  RowBytes(byte[] row) {
    this.row = row;
  }

  boolean next(int c) {
    return at < row.length && row[at++] == c;
  }

  boolean ended() {
    return at == row.length;
  }

  /** Whether a field of these bytes comes next. */
  boolean value(byte[] bytes, int from, int to) {
    int begin = at + 1;
    at = begin + to - from;
    return at <= row.length
        && row[begin - 1] == BETWEEN
        && Arrays.equals(row, begin, at, bytes, from, to);
  }

  /** Whether a field of this text comes next; false, too, for a text that its bytes do not tell. */
  boolean value(String text) {
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      // Half a pair has no bytes of its own in UTF-8, and would look like a question mark.
      if (c == LEAD || Character.isSurrogate(c)) {
        return false;
      }
    }
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    return value(bytes, 0, bytes.length);
  }
}
