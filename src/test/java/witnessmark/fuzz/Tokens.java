package witnessmark.fuzz;

import java.util.Arrays;
import java.util.Random;

/** Where the words, marks and lines of some bytes begin. */
final class Tokens {
  private final byte[] bytes;
  private final int[] starts;
  private final int count;

  private Tokens(byte[] bytes, int[] starts, int count) {
    this.bytes = bytes;
    this.starts = starts;
    this.count = count;
  }

  /** A run of letters and digits is one token, every other byte is one of its own. */
  static Tokens of(byte[] bytes) {
    int[] starts = new int[bytes.length + 1];
    int count = 0;
    for (int i = 0; i < bytes.length; i++) {
      if (i == 0 || !word(bytes[i]) || !word(bytes[i - 1])) {
        starts[count++] = i;
      }
    }
    starts[count] = bytes.length;
    return new Tokens(bytes, starts, count);
  }

  private static boolean word(byte b) {
    return b >= '0' && b <= '9' || b >= 'A' && b <= 'Z' || b >= 'a' && b <= 'z' || b < 0;
  }

  int count() {
    return count;
  }

  /** Where token {@code i} begins; the end of the bytes for the one behind the last. */
  int start(int i) {
    return starts[i];
  }

  byte[] token(int i) {
    return Arrays.copyOfRange(bytes, starts[i], starts[i + 1]);
  }

  /** A token of digits, or -1 when there seems to be none. */
  int number(Random random) {
    for (int tries = 0; count > 0 && tries < 16; tries++) {
      int i = random.nextInt(count);
      if (bytes[starts[i]] >= '0' && bytes[starts[i]] <= '9') {
        return i;
      }
    }
    return -1;
  }

  /** The line around a random place: where it begins, and where the next one does. */
  int[] line(Random random) {
    int at = random.nextInt(bytes.length + 1);
    int from = at;
    while (from > 0 && bytes[from - 1] != '\n') {
      from--;
    }
    int to = at;
    while (to < bytes.length && bytes[to] != '\n') {
      to++;
    }
    return new int[] {from, Math.min(bytes.length, to + 1)};
  }
}
