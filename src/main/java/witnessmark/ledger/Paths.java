package witnessmark.ledger;

import java.util.ArrayList;
import java.util.List;

/**
 * The paths of hashes that prove something about a tree: RFC 6962, section 2.1.1 (an entry is in
 * it) and 2.1.2 (it goes on from an earlier one), from the definitions there.
 */
final class Paths {
  /** Where the hashes of full subtrees come from. */
  interface Subtrees {
    /** The hash over the 2^height leaves from number {@code index * 2^height} on. */
    byte[] full(int height, long index);
  }

  private final Subtrees subtrees;

  Paths(Subtrees subtrees) {
    this.subtrees = subtrees;
  }

  /** MTH(D[size]). */
  byte[] root(long size) {
    return size == 0 ? Hashing.empty() : hash(0, size);
  }

  /** PATH(n, D[size]): the siblings on the way from leaf {@code n} up, nearest the leaf first. */
  List<byte[]> inclusion(long n, long size) {
    if (n < 0 || n >= size) {
      throw new IllegalArgumentException("leaf " + n + " is not in a tree of " + size);
    }
    List<byte[]> path = new ArrayList<>();
    inclusion(n, 0, size, path);
    return path;
  }

  private void inclusion(long n, long from, long to, List<byte[]> path) {
    if (to - from == 1) {
      return;
    }
    long middle = from + split(to - from);
    if (n < middle) {
      inclusion(n, from, middle, path);
      path.add(hash(middle, to));
    } else {
      inclusion(n, middle, to, path);
      path.add(hash(from, middle));
    }
  }

  /** PROOF(m, D[size]); empty when both sizes are the same. */
  List<byte[]> consistency(long m, long size) {
    if (m < 1 || m > size) {
      throw new IllegalArgumentException("no tree of " + size + " goes on from one of " + m);
    }
    List<byte[]> path = new ArrayList<>();
    consistency(m, 0, size, true, path);
    return path;
  }

  /** SUBPROOF; {@code whole} while the subtree is the whole earlier tree, whose root is known. */
  private void consistency(long m, long from, long to, boolean whole, List<byte[]> path) {
    if (m == to) {
      if (!whole) {
        path.add(hash(from, to));
      }
      return;
    }
    long middle = from + split(to - from);
    if (m <= middle) {
      consistency(m, from, middle, whole, path);
      path.add(hash(middle, to));
    } else {
      consistency(m, middle, to, false, path);
      path.add(hash(from, middle));
    }
  }

  /** The root that a leaf hash and its path make. */
  static byte[] root(long n, long size, byte[] leaf, List<byte[]> path) {
    if (size == 1) {
      return leaf;
    }
    byte[] last = path.get(path.size() - 1);
    List<byte[]> below = path.subList(0, path.size() - 1);
    long k = split(size);
    return n < k
        ? Hashing.node(root(n, k, leaf, below), last)
        : Hashing.node(last, root(n - k, size - k, leaf, below));
  }

  /** MTH(D[from:to]); {@code from} is a multiple of the largest power of two not above the rest. */
  private byte[] hash(long from, long to) {
    long leaves = to - from;
    if (Long.bitCount(leaves) == 1) {
      int height = Long.numberOfTrailingZeros(leaves);
      return subtrees.full(height, from >> height);
    }
    long middle = from + split(leaves);
    return Hashing.node(hash(from, middle), hash(middle, to));
  }

  /** The largest power of two smaller than n. */
  private static long split(long n) {
    return Long.highestOneBit(n - 1);
  }
}
