package witnessmark.ledger;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Hashes of full subtrees, from the stored tiles and, below them, from the entries: a read fetches
 * the up to 256 hashes that lie side by side below one tile, so a path costs one read a level.
 */
final class TileBlocks implements Paths.Subtrees {
  private static final int BITS = 8;
  private static final int WIDTH = 1 << BITS;

  /** Kept for the next path; 32 of them are a quarter of a megabyte. */
  private static final int KEPT = 32;

  private record Key(int level, long index) {}

  private final Reading reading;
  private final Map<Key, List<byte[]>> blocks =
      new LinkedHashMap<>(KEPT, 0.75f, true) {
        @Override
        protected boolean removeEldestEntry(Map.Entry<Key, List<byte[]>> eldest) {
          return size() > KEPT;
        }
      };

  TileBlocks(Reading reading) {
    this.reading = reading;
  }

  @Override
  public byte[] full(int height, long index) {
    int level = height / BITS;
    int above = height % BITS;
    long first = index << above;
    List<byte[]> block =
        blocks.computeIfAbsent(new Key(level, first >> BITS), k -> read(k.level(), k.index()));
    int at = (int) (first % WIDTH);
    int count = 1 << above;
    if (block.size() < at + count) {
      throw new LedgerException(
          "The tree of the log lacks hash "
              + (first + block.size() - at)
              + " of level "
              + level
              + ", so no proof can be made. Run: witnessmark ledger verify");
    }
    return merged(block.subList(at, at + count));
  }

  private List<byte[]> read(int level, long index) {
    return level > 0
        ? reading.tiles(level, index * WIDTH, WIDTH)
        : reading.from(index * WIDTH, WIDTH).stream().map(s -> Hashing.leaf(s.bytes())).toList();
  }

  /** The hash over a power of two of neighbours. */
  private static byte[] merged(List<byte[]> hashes) {
    List<byte[]> row = hashes;
    while (row.size() > 1) {
      List<byte[]> above = new ArrayList<>(row.size() / 2);
      for (int i = 0; i < row.size(); i += 2) {
        above.add(Hashing.node(row.get(i), row.get(i + 1)));
      }
      row = above;
    }
    return row.get(0);
  }
}
