package witnessmark.ledger.verify;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;

/** Goes over the bytes of an entry, eight at a time. */
final class PlainText {
  private static final VarHandle EIGHT =
      MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);
  private static final long ONES = 0x0101010101010101L;

  /** The longest name that is told from others. */
  private static final int LONGEST_NAME = 16;

  private byte[] bytes;

  /** The next byte. */
  int at;

  /** Where the text just read has its bytes, and whether an escape is among them. */
  int start;

  int end;
  boolean escaped;

  /** The name just read: its first eight bytes and the others, least first, zeros behind. */
  long first;

  long second;

  void begin(byte[] all) {
    bytes = all;
    at = 0;
  }

  boolean ended() {
    return at == bytes.length;
  }

  /** The next byte, or 0 at the end. */
  int peek() {
    return at < bytes.length ? bytes[at] : 0;
  }

  boolean next(int c) {
    if (at < bytes.length && bytes[at] == c) {
      at++;
      return true;
    }
    return false;
  }

  boolean word(String word) {
    for (int i = 0; i < word.length(); i++) {
      if (!next(word.charAt(i))) {
        return false;
      }
    }
    return true;
  }

  /** A name with its quotes, without escapes, of at most 16 bytes. */
  boolean name() {
    if (!next('"')) {
      return false;
    }
    int from = at;
    int to = special(from);
    int length = to - from;
    if (length > LONGEST_NAME) {
      return false;
    }
    first = masked(eight(from), length);
    second = length > Long.BYTES ? masked(eight(from + Long.BYTES), length - Long.BYTES) : 0;
    at = to;
    return next('"');
  }

  private static long masked(long eight, int length) {
    return length >= Long.BYTES ? eight : eight & (1L << length * Byte.SIZE) - 1;
  }

  /** A text with its quotes; escapes may be in it, but none with digits. */
  boolean text() {
    if (!next('"')) {
      return false;
    }
    start = at;
    escaped = false;
    int i = special(start);
    while (i + 1 < bytes.length && bytes[i] == '\\' && escape(bytes[i + 1])) {
      escaped = true;
      i = special(i + 2);
    }
    end = i;
    at = i;
    return next('"');
  }

  private static boolean escape(byte c) {
    return switch (c) {
      case '"', '\\', '/', 'b', 'f', 'n', 'r', 't' -> true;
      default -> false;
    };
  }

  /** Digits; how many there were. */
  int digits() {
    int from = at;
    while (at < bytes.length && bytes[at] >= '0' && bytes[at] <= '9') {
      at++;
    }
    return at - from;
  }

  /** The first byte from {@code i} on that a text does not hold as it is; the length if none. */
  private int special(int i) {
    int next = i;
    while (next < bytes.length) {
      long found = special(eight(next));
      if (found != 0) {
        return next + Long.numberOfTrailingZeros(found) / Byte.SIZE;
      }
      next += Long.BYTES;
    }
    return bytes.length;
  }

  /**
   * Not zero when one of eight bytes is a control, a quote, a backslash or no ASCII; then the
   * lowest bit set is the high one of the first such byte. In x - y the high bit of a byte is set
   * where x is less than y, and only a byte below one that is so can make it wrong.
   */
  private static long special(long eight) {
    long control = eight - ONES * ' ';
    long quote = (eight ^ ONES * '"') - ONES;
    long backslash = (eight ^ ONES * '\\') - ONES;
    return (control | quote | backslash | eight) & ONES * 0x80;
  }

  /** Eight bytes, the first one least; zeros, which are controls, behind the end. */
  private long eight(int i) {
    if (i <= bytes.length - Long.BYTES) {
      return (long) EIGHT.get(bytes, i);
    }
    long eight = 0;
    for (int k = bytes.length - 1; k >= i; k--) {
      eight = eight << Byte.SIZE | bytes[k] & 0xff;
    }
    return eight;
  }
}
