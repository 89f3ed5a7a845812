package witnessmark.ledger.verify;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Compares table {@code tile} with the tree's full subtrees of 256^level leaves as they fill. */
final class TileCheck implements AutoCloseable {
  private static final String TABLE = "tile";
  private static final int BITS = 8;

  private final RawLedger ledger;
  private final Findings findings;
  private final List<Level> levels = new ArrayList<>();

  TileCheck(RawLedger ledger, Findings findings) {
    this.ledger = ledger;
    this.findings = findings;
  }

  /** Hears of a full subtree of 2^height leaves. */
  void subtree(int height, long index, byte[] hash) {
    if (height % BITS != 0) {
      return;
    }
    int level = height / BITS;
    if (level > levels.size()) {
      levels.add(new Level(level));
    }
    levels.get(level - 1).full(index, hash);
  }

  /** Names the tiles that no full subtree stands for. */
  void finish() {
    levels.forEach(Level::finish);
    if (levels.stream().anyMatch(level -> level.rows.unreadable())) {
      return;
    }
    try (Table others =
        new Table(TABLE, Findings.Subject.TILE, findings, () -> ledger.otherTiles(levels.size()))) {
      while (others.next()) {
        extra(Cells.show(others.value(0)), Cells.show(others.value(1)));
      }
    }
  }

  private void extra(Object level, Object idx) {
    add(level, idx, "the row is extra; the entries fill no such subtree");
  }

  private void add(Object level, Object idx, String sentence) {
    findings.add(
        Findings.Subject.TILE, Place.row(TABLE, "level " + level + " idx " + idx), sentence);
  }

  @Override
  public void close() {
    levels.forEach(level -> level.rows.close());
  }

  /** The tiles of one level, read in step with the entries. */
  private final class Level {
    private final int level;
    private final Table rows;
    private boolean more = true;
    private long current;

    Level(int level) {
      this.level = level;
      this.rows = new Table(TABLE, Findings.Subject.TILE, findings, () -> ledger.tiles(level));
      advance();
    }

    void full(long index, byte[] hash) {
      while (more && current < index) {
        extra(level, current);
        advance();
      }
      if (more && current == index) {
        compare(index, hash);
        advance();
      } else if (!rows.unreadable()) {
        add(level, index, "the row is missing; " + covered(index) + " fill it");
      }
    }

    void finish() {
      while (more) {
        extra(level, current);
        advance();
      }
    }

    private void compare(long index, byte[] hash) {
      Object stored = rows.value(1);
      if (!(stored instanceof byte[] bytes && Arrays.equals(bytes, hash)) && !rows.unreadable()) {
        String found = "holds " + Cells.show(stored) + ", " + covered(index);
        add(level, index, found + " give " + Cells.show(hash.clone()));
      }
    }

    private Place covered(long index) {
      long leaves = 1L << BITS * level;
      return Place.entries(index * leaves, (index + 1) * leaves - 1);
    }

    private void advance() {
      while (more = rows.next()) {
        Object idx = rows.value(0);
        if (idx instanceof Long number) {
          current = number;
          return;
        }
        if (!rows.unreadable()) {
          add(level, Cells.show(idx), "column idx holds no integer");
        }
      }
    }
  }
}
