package witnessmark.ledger;

import java.util.ArrayList;
import java.util.List;

/**
 * The right edge of the tree: the full subtrees that make up the first {@code size} leaves, largest
 * first. Enough to append a leaf and to tell the root in O(log size).
 */
public final class Frontier {
  /**
   * Leaves of a tile's subtree are 256 to the power of its level, so a level is eight doublings.
   */
  private static final int TILE_HEIGHT = 8;

  /** Hears of every tile that an append completes. */
  public interface TileSink {
    void tile(int level, long index, byte[] hash);
  }

  private record Subtree(int height, byte[] hash) {}

  private final List<Subtree> subtrees;
  private long size;

  public Frontier() {
    this(0, List.of());
  }

  private Frontier(long size, List<Subtree> subtrees) {
    this.size = size;
    this.subtrees = new ArrayList<>(subtrees);
  }

  public Frontier copy() {
    return new Frontier(size, subtrees);
  }

  /** How many leaves. */
  public long size() {
    return size;
  }

  /** Appends a leaf hash. */
  public void append(byte[] leaf, TileSink tiles) {
    push(0, leaf, tiles);
  }

  /**
   * Appends the hash of a full tile at once, which stands for 256^level leaves.
   *
   * @throws IllegalStateException when the size so far is not a multiple of that
   */
  public void appendTile(int level, byte[] hash) {
    if (size % (1L << (TILE_HEIGHT * level)) != 0) {
      throw new IllegalStateException("a tile of level " + level + " cannot follow size " + size);
    }
    push(TILE_HEIGHT * level, hash, (l, i, h) -> {});
  }

  private void push(int height, byte[] hash, TileSink tiles) {
    size += 1L << height;
    int h = height;
    byte[] merged = hash;
    while (!subtrees.isEmpty() && subtrees.get(subtrees.size() - 1).height() == h) {
      merged = Hashing.node(subtrees.remove(subtrees.size() - 1).hash(), merged);
      h++;
      if (h % TILE_HEIGHT == 0) {
        tiles.tile(h / TILE_HEIGHT, (size >> h) - 1, merged);
      }
    }
    subtrees.add(new Subtree(h, merged));
  }

  /** The root of the tree, RFC 6962's MTH. */
  public byte[] root() {
    if (subtrees.isEmpty()) {
      return Hashing.empty();
    }
    byte[] root = subtrees.get(subtrees.size() - 1).hash();
    for (int i = subtrees.size() - 2; i >= 0; i--) {
      root = Hashing.node(subtrees.get(i).hash(), root);
    }
    return root;
  }
}
