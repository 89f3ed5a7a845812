package witnessmark.ledger.verify;

/**
 * The RFC 6962 tree over leaves as they come: keeps one hash a level, so memory does not grow with
 * the log.
 */
final class Tree {
  /** Hears of every subtree of 2^height leaves when its last leaf has come. */
  interface Subtrees {
    void full(int height, long index, byte[] hash);
  }

  private final Hashes hashes;
  private final Subtrees subtrees;
  private final byte[][] left = new byte[Long.SIZE][Hashes.LENGTH];
  private final byte[] hash = new byte[Hashes.LENGTH];
  private long size;

  Tree(Hashes hashes, Subtrees subtrees) {
    this.hashes = hashes;
    this.subtrees = subtrees;
  }

  void add(byte[] leaf) {
    System.arraycopy(leaf, 0, hash, 0, Hashes.LENGTH);
    int height = 0;
    for (long index = size; (index & 1) == 1; index >>= 1) {
      hashes.node(left[height], hash, hash);
      height++;
      subtrees.full(height, index >> 1, hash);
    }
    System.arraycopy(hash, 0, left[height], 0, Hashes.LENGTH);
    size++;
  }

  long size() {
    return size;
  }

  /** The root over the leaves so far. */
  byte[] root() {
    if (size == 0) {
      return hashes.empty();
    }
    int height = Long.numberOfTrailingZeros(size);
    byte[] root = left[height].clone();
    for (height++; size >> height != 0; height++) {
      if ((size >> height & 1) == 1) {
        hashes.node(left[height], root, root);
      }
    }
    return root;
  }
}
