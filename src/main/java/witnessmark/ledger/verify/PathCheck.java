package witnessmark.ledger.verify;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Follows paths of hashes to signed roots, in the steps of RFC 9162, numbered as there.
 *
 * @see <a href="https://www.rfc-editor.org/rfc/rfc9162#section-2.1.3.2">section 2.1.3.2</a>
 * @see <a href="https://www.rfc-editor.org/rfc/rfc9162#section-2.1.4.2">section 2.1.4.2</a>
 */
final class PathCheck {
  /** A tree of 2^63 leaves, more than a log can have, has paths of so many hashes. */
  static final int LONGEST = 63;

  private final Hashes hashes = new Hashes();

  /**
   * Checks that a leaf is in a tree. In a tree of no leaves is none.
   *
   * @throws ProofFault when the path does not show it
   */
  void inclusion(long index, long size, byte[] leaf, List<byte[]> path, byte[] root)
      throws ProofFault {
    whole(path, leaf, root);
    // 1. a number beyond the tree fails
    if (index < 0 || index >= size) {
      throw new ProofFault(
          "its number "
              + index
              + " is not among the "
              + size
              + " entries that the checkpoint signs");
    }
    // 2. and 3.
    long fn = index;
    long sn = size - 1;
    byte[] r = leaf.clone();
    // 4.
    for (byte[] p : path) {
      if (sn == 0) {
        throw new ProofFault("its path is too long for a tree of " + size);
      }
      if ((fn & 1) == 1 || fn == sn) {
        hashes.node(p, r, r);
        while ((fn & 1) == 0 && fn != 0) {
          fn >>= 1;
          sn >>= 1;
        }
      } else {
        hashes.node(r, p, r);
      }
      fn >>= 1;
      sn >>= 1;
    }
    // 5.
    if (sn != 0) {
      throw new ProofFault("its path is too short for a tree of " + size);
    }
    if (!Arrays.equals(r, root)) {
      throw new ProofFault("its bytes and path do not lead to the signed root");
    }
  }

  /**
   * Checks that a tree goes on from an earlier one.
   *
   * <p>The RFC asks for {@code 0 < first < second}. Two trees of one size are the same when their
   * roots are, and the path is empty, as section 2.1.4.1 makes it. An earlier tree of no leaves is
   * refused, also beside another of none: every tree goes on from it, so the answer would be worth
   * nothing.
   *
   * @throws ProofFault when the path does not show it
   */
  void consistency(long first, byte[] firstRoot, long second, byte[] secondRoot, List<byte[]> path)
      throws ProofFault {
    whole(path, firstRoot, secondRoot);
    if (first < 1) {
      throw new ProofFault(
          "the earlier checkpoint signs no entry: every log goes on from it, so nothing is proved");
    }
    if (first > second) {
      throw new ProofFault(
          "the earlier checkpoint signs "
              + first
              + " entries, the later one only "
              + second
              + ": exchange them, or history was rewritten");
    }
    if (first == second) {
      if (!path.isEmpty()) {
        throw new ProofFault("the path must be empty between checkpoints of one size");
      }
      same(firstRoot, secondRoot, "both sign " + first + " entries, but not the same ones");
      return;
    }
    climb(first, firstRoot, second, secondRoot, path);
  }

  private void climb(
      long first, byte[] firstRoot, long second, byte[] secondRoot, List<byte[]> given)
      throws ProofFault {
    // 1. an empty path fails
    if (given.isEmpty()) {
      throw new ProofFault("the path is empty");
    }
    // 2. where the earlier tree is a full subtree, its root stands for the first hash
    List<byte[]> path = new ArrayList<>(given);
    if (Long.bitCount(first) == 1) {
      path.add(0, firstRoot);
    }
    // 3. and 4.
    long fn = first - 1;
    long sn = second - 1;
    while ((fn & 1) == 1) {
      fn >>= 1;
      sn >>= 1;
    }
    // 5.
    byte[] fr = path.get(0).clone();
    byte[] sr = path.get(0).clone();
    // 6.
    for (byte[] c : path.subList(1, path.size())) {
      if (sn == 0) {
        throw new ProofFault("the path is too long");
      }
      if ((fn & 1) == 1 || fn == sn) {
        hashes.node(c, fr, fr);
        hashes.node(c, sr, sr);
        while ((fn & 1) == 0 && fn != 0) {
          fn >>= 1;
          sn >>= 1;
        }
      } else {
        hashes.node(sr, c, sr);
      }
      fn >>= 1;
      sn >>= 1;
    }
    // 7.
    if (sn != 0) {
      throw new ProofFault("the path is too short");
    }
    same(fr, firstRoot, "the path does not lead to the root of the earlier checkpoint");
    same(sr, secondRoot, "the path does not lead to the root of the later checkpoint");
  }

  private static void same(byte[] made, byte[] root, String otherwise) throws ProofFault {
    if (!Arrays.equals(made, root)) {
      throw new ProofFault(otherwise);
    }
  }

  /** Every hash has its 32 bytes: an empty one must not pass for an empty other. */
  private static void whole(List<byte[]> path, byte[]... others) throws ProofFault {
    if (path.size() > LONGEST) {
      throw new ProofFault("the path has " + path.size() + " hashes, expected at most " + LONGEST);
    }
    List<byte[]> all = new ArrayList<>(path);
    all.addAll(List.of(others));
    for (byte[] hash : all) {
      if (hash.length != Hashes.LENGTH) {
        throw new ProofFault("a hash has " + hash.length + " bytes, expected " + Hashes.LENGTH);
      }
    }
  }
}
