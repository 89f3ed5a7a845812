package witnessmark.decode;

/**
 * A mark being looked for in a stream, byte by byte, in constant time a byte (Knuth, Morris and
 * Pratt). It holds back the newest bytes that may still turn out to be the mark's beginning.
 */
final class Sought {
  /** Takes bytes that cannot begin the mark any more. */
  @FunctionalInterface
  interface Freed {
    void add(byte free);
  }

  private final byte[] mark;
  private final int[] fallback;
  private int matched;

  Sought(Bytes mark) {
    this.mark = mark.toArray();
    this.fallback = new int[this.mark.length];
    for (int i = 1, k = 0; i < this.mark.length; i++) {
      while (k > 0 && this.mark[k] != this.mark[i]) {
        k = fallback[k - 1];
      }
      if (this.mark[k] == this.mark[i]) {
        k++;
      }
      fallback[i] = k;
    }
  }

  int length() {
    return mark.length;
  }

  /** Takes the next byte; bytes that are now known not to begin the mark go to {@code freed}. */
  void take(byte next, Freed freed) {
    int held = matched;
    while (matched > 0 && mark[matched] != next) {
      matched = fallback[matched - 1];
    }
    if (mark[matched] == next) {
      matched++;
    }
    int free = held + 1 - matched;
    for (int i = 0; i < free; i++) {
      freed.add(i < held ? mark[i] : next);
    }
  }

  /** Whether the newest bytes are the mark. */
  boolean found() {
    return matched == mark.length;
  }

  /** Gives up what is held back. */
  void release(Freed freed) {
    for (int i = 0; i < matched; i++) {
      freed.add(mark[i]);
    }
    matched = 0;
  }
}
