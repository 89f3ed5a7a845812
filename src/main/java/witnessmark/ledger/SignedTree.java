package witnessmark.ledger;

import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.function.Function;

/** The tree that the newest checkpoint signs, and the paths through it. */
final class SignedTree {
  private final Reading reading;
  private final Paths paths;
  private final String note;
  private final TreeHead head;

  private SignedTree(Reading reading, String note) {
    this.reading = reading;
    this.paths = new Paths(new TileBlocks(reading));
    this.note = note;
    this.head = TreeHead.of(note);
  }

  /**
   * Looks at the tree of one moment, so that checkpoint, entries and paths agree.
   *
   * @throws LedgerException when the log is empty, cannot be read, or is not as it was signed
   */
  static <T> T look(Reading reading, Function<SignedTree, T> look) {
    return reading.atOneMoment(
        () -> {
          String note =
              reading
                  .checkpoint()
                  .orElseThrow(() -> new LedgerException("The log has no entry yet."));
          SignedTree tree = new SignedTree(reading, note);
          tree.check(tree.rootOf(tree.size()));
          return look.apply(tree);
        });
  }

  /** The newest checkpoint, a signed note. */
  String note() {
    return note;
  }

  String origin() {
    return head.origin();
  }

  long size() {
    return head.size();
  }

  /** The root over the first {@code size} entries as they are now. */
  byte[] rootOf(long size) {
    return paths.root(size);
  }

  /**
   * An entry with the path that proves it.
   *
   * @throws IllegalArgumentException when the tree has no such entry
   */
  Included included(long n) {
    if (n < 0 || n >= size()) {
      throw new IllegalArgumentException(
          "There is no entry " + n + "; the log has the entries 0 to " + (size() - 1) + ".");
    }
    byte[] bytes =
        reading.entry(n).orElseThrow(() -> new LedgerException("Entry " + n + " is gone.")).bytes();
    List<byte[]> path = paths.inclusion(n, size());
    // The path came from tiles: it would prove nothing for an entry changed below one.
    check(Paths.root(n, size(), Hashing.leaf(bytes), path));
    return new Included(n, bytes, path);
  }

  /** The entries of this tree by which the log's keys vouch for each other, by number. */
  List<Included> vouchers() {
    return reading.registers(List.of(Handover.KIND), size()).stream()
        .map(stored -> included(stored.n()))
        .toList();
  }

  /** The path that proves that this tree goes on from its first {@code m} entries. */
  List<byte[]> growth(long m) {
    return paths.consistency(m, size());
  }

  private void check(byte[] root) {
    if (!Arrays.equals(root, head.root())) {
      throw new LedgerException(
          "The log is not as it was signed: its checkpoint signs the root "
              + Base64.getEncoder().encodeToString(head.root())
              + ", its entries and tiles make "
              + Base64.getEncoder().encodeToString(root)
              + ". No proof can be made. Run: witnessmark ledger verify");
    }
  }

  /**
   * An entry and its path.
   *
   * @param n the entry's number
   * @param bytes its exact bytes
   * @param path hashes, nearest the leaf first
   */
  record Included(long n, byte[] bytes, List<byte[]> path) {}
}
