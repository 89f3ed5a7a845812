package witnessmark.ledger.verify;

import java.util.ArrayList;
import java.util.List;

/** The definitions of RFC 6962, sections 2.1.1 and 2.1.2, word for word, and no code of ours. */
public final class NaiveTree {
  private NaiveTree() {}

  /** PATH(m, D[n]). */
  public static List<byte[]> path(int m, List<byte[]> d) {
    int n = d.size();
    if (n == 1) {
      return List.of();
    }
    int k = Integer.highestOneBit(n - 1);
    return m < k
        ? with(path(m, d.subList(0, k)), ExportRoot.mth(d.subList(k, n)))
        : with(path(m - k, d.subList(k, n)), ExportRoot.mth(d.subList(0, k)));
  }

  /** PROOF(m, D[n]). */
  public static List<byte[]> proof(int m, List<byte[]> d) {
    return subproof(m, d, true);
  }

  private static List<byte[]> subproof(int m, List<byte[]> d, boolean b) {
    int n = d.size();
    if (m == n) {
      return b ? List.of() : List.of(ExportRoot.mth(d));
    }
    int k = Integer.highestOneBit(n - 1);
    return m <= k
        ? with(subproof(m, d.subList(0, k), b), ExportRoot.mth(d.subList(k, n)))
        : with(subproof(m - k, d.subList(k, n), false), ExportRoot.mth(d.subList(0, k)));
  }

  private static List<byte[]> with(List<byte[]> path, byte[] hash) {
    List<byte[]> longer = new ArrayList<>(path);
    longer.add(hash);
    return longer;
  }
}
