package witnessmark.ledger.verify;

/**
 * The names that an entry's objects have so far, to tell a name that comes twice in one. A name of
 * at most 16 bytes is two numbers.
 */
final class NameSet {
  private static final int BITS = 8;
  private static final int SLOTS = 1 << BITS;
  private static final int MOST = SLOTS / 2;

  private final int[] entry = new int[SLOTS];
  private final int[] object = new int[SLOTS];
  private final long[] begin = new long[SLOTS];
  private final long[] rest = new long[SLOTS];
  private int current;
  private int size;

  /** Forgets all of them: what was stored for an earlier entry no longer counts. */
  void clear() {
    current++;
    size = 0;
  }

  /** Takes a name in; false when that object has it already, or there is no room left. */
  boolean add(int owner, long first, long second) {
    if (++size > MOST) {
      return false;
    }
    int slot = (slot(first, second, BITS) + owner) & (SLOTS - 1);
    while (entry[slot] == current) {
      if (object[slot] == owner && begin[slot] == first && rest[slot] == second) {
        return false;
      }
      slot = (slot + 1) & (SLOTS - 1);
    }
    entry[slot] = current;
    object[slot] = owner;
    begin[slot] = first;
    rest[slot] = second;
    return true;
  }

  /** Where to begin to look for a name in a table of 2^bits. */
  static int slot(long first, long second, int bits) {
    // an odd number with its bits well spread: the golden ratio's first 64
    return (int) ((first + second * 31) * 0x9e3779b97f4a7c15L >>> Long.SIZE - bits);
  }
}
