package witnessmark.ledger.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PathCheckTest {
  private static final byte[] ODD = new byte[32];

  private final PathCheck check = new PathCheck();

  /** Asks whether leaf {@code index} with hash {@code leaf} is in a tree, or one goes on. */
  private interface Ask {
    void run(long first, long size, byte[] one, List<byte[]> path, byte[] root) throws ProofFault;
  }

  private static byte[] root(long size) {
    return HexFormat.of().parseHex(TreeVectors.ROOTS.get((int) size));
  }

  private static byte[] leaf(byte[] data) {
    return Sha.of(new byte[] {0}, data);
  }

  private static byte[] leaf(long n) {
    return leaf(TreeVectors.LEAVES.get((int) n));
  }

  @Test
  void thePublishedPathsLeadToThePublishedRoots() {
    for (PathVectors.Case c : PathVectors.INCLUSION) {
      assertThatCode(
              () -> check.inclusion(c.first(), c.size(), leaf(c.first()), c.path(), root(c.size())))
          .doesNotThrowAnyException();
    }
    for (PathVectors.Case c : PathVectors.CONSISTENCY) {
      assertThatCode(
              () ->
                  check.consistency(c.first(), root(c.first()), c.size(), root(c.size()), c.path()))
          .doesNotThrowAnyException();
    }
  }

  /**
   * The kinds of wrong inclusion proofs that transparency-dev/merkle collects under {@code
   * testdata/inclusion} (Apache-2.0; kinds by their file names, read there), made anew from the
   * good cases.
   */
  @Test
  void everyKindOfWrongInclusionProofIsRefused() {
    for (PathVectors.Case c : PathVectors.INCLUSION) {
      byte[] root = root(c.size());
      for (List<byte[]> path : wrong(c.path(), root)) {
        refused(check::inclusion, c.first(), c.size(), leaf(c.first()), path, root);
      }
      if (c.size() > 1) {
        for (long index : new long[] {c.first() - 1, c.first() + 1, c.first() ^ 2}) {
          refused(check::inclusion, index, c.size(), leaf(c.first()), c.path(), root);
        }
        refused(check::inclusion, c.first(), c.size() / 2, leaf(c.first()), c.path(), root);
      }
      refused(check::inclusion, c.first(), c.size() * 2, leaf(c.first()), c.path(), root);
      for (byte[] other : List.of(new byte[0], ODD, leaf(ODD))) {
        refused(check::inclusion, c.first(), c.size(), other, c.path(), root);
        refused(check::inclusion, c.first(), c.size(), leaf(c.first()), c.path(), other);
      }
    }
    // empty-root-and-leaf: two empty hashes are equal, and prove nothing
    refused(check::inclusion, 0, 1, new byte[0], List.of(), new byte[0]);
    refused(check::inclusion, 0, 0, leaf(0), List.of(), root(0));
  }

  /** The same of {@code testdata/consistency}, with the degenerate cases decided on purpose. */
  @Test
  void everyKindOfWrongConsistencyProofIsRefused() {
    for (PathVectors.Case c : PathVectors.CONSISTENCY) {
      byte[] before = root(c.first());
      byte[] after = root(c.size());
      Ask ask = (first, size, one, path, root) -> check.consistency(first, one, size, root, path);
      List<List<byte[]>> paths = wrong(c.path(), after);
      paths.addAll(wrong(c.path(), before));
      for (List<byte[]> path : paths) {
        refused(ask, c.first(), c.size(), before, path, after);
      }
      if (c.first() < c.size()) {
        for (long first : new long[] {c.first() - 1, c.first() + 1, c.first() ^ 2}) {
          refused(ask, first, c.size(), before, c.path(), after);
        }
        refused(ask, c.first(), c.size(), after, c.path(), before);
        refused(ask, c.size(), c.first(), after, c.path(), before);
        refused(ask, c.first(), c.size() / 2, before, c.path(), after);
        refused(ask, c.first(), c.size(), before, List.of(), after);
      }
      refused(ask, c.first(), c.size() * 2, before, c.path(), after);
      for (byte[] other : List.of(new byte[0], ODD)) {
        refused(ask, c.first(), c.size(), other, c.path(), after);
        refused(ask, c.first(), c.size(), before, c.path(), other);
      }
    }
    Ask ask = (first, size, one, path, root) -> check.consistency(first, one, size, root, path);
    refused(ask, 0, 0, root(0), List.of(), root(0));
    refused(ask, 0, 0, root(0), List.of(ODD), root(0));
    refused(ask, 0, 1, root(0), List.of(), root(1));
    refused(ask, 0, 8, root(0), List.of(ODD), root(8));
    refused(ask, 1, 1, root(1), List.of(ODD), root(1));
    refused(ask, 1, 1, root(1), List.of(), root(2));
    refused(ask, 1, 1, new byte[0], List.of(), new byte[0]);
    refused(ask, -1, 1, root(1), List.of(), root(1));
  }

  /** Garbage, roots and hashes in front, behind and between; one less; a bit turned over. */
  private static List<List<byte[]>> wrong(List<byte[]> path, byte[] root) {
    List<List<byte[]>> all = new ArrayList<>();
    for (int at = 0; at <= path.size(); at++) {
      for (byte[] hash : List.of(new byte[0], ODD, root)) {
        List<byte[]> longer = new ArrayList<>(path);
        longer.add(at, hash);
        all.add(longer);
      }
    }
    for (int at = 0; at < path.size(); at++) {
      List<byte[]> shorter = new ArrayList<>(path);
      shorter.remove(at);
      all.add(shorter);
      for (int bit = 0; bit < 256; bit++) {
        List<byte[]> changed = new ArrayList<>(path);
        byte[] hash = path.get(at).clone();
        hash[bit / 8] ^= (byte) (1 << bit % 8);
        changed.set(at, hash);
        all.add(changed);
      }
    }
    return all;
  }

  private static void refused(
      Ask ask, long first, long size, byte[] one, List<byte[]> path, byte[] root) {
    assertThatThrownBy(() -> ask.run(first, size, one, path, root))
        .as("(%d, %d) with %d hashes", first, size, path.size())
        .isInstanceOf(ProofFault.class);
  }

  @Test
  void pathsOfAnyTreeLeadToItsRootAndToNoOther() throws ProofFault {
    long seed = new Random().nextLong();
    Random random = new Random(seed);
    List<byte[]> leaves = new ArrayList<>();
    for (int i = 0; i < 600; i++) {
      byte[] data = new byte[random.nextInt(40)];
      random.nextBytes(data);
      leaves.add(data);
    }
    for (int round = 0; round < 300; round++) {
      int size = 1 + random.nextInt(600);
      List<byte[]> d = leaves.subList(0, size);
      byte[] root = ExportRoot.mth(d);
      int n = random.nextInt(size);
      check.inclusion(n, size, leaf(d.get(n)), NaiveTree.path(n, d), root);
      int m = 1 + random.nextInt(size);
      byte[] before = ExportRoot.mth(d.subList(0, m));
      check.consistency(m, before, size, root, NaiveTree.proof(m, d));
      List<byte[]> bent = new ArrayList<>(NaiveTree.path(n, d));
      if (!bent.isEmpty()) {
        byte[] hash = bent.get(random.nextInt(bent.size()));
        hash[random.nextInt(32)] ^= (byte) (1 + random.nextInt(255));
        String what = "seed " + seed + ", (" + n + ", " + size + ")";
        assertThatThrownBy(() -> check.inclusion(n, size, leaf(d.get(n)), bent, root))
            .as(what)
            .isInstanceOf(ProofFault.class);
      }
    }
  }

  @Test
  void thePathOfTheLongestTreeIsNotTooLong() {
    List<byte[]> path = new ArrayList<>();
    for (int i = 0; i < 63; i++) {
      path.add(ODD);
    }
    assertThatThrownBy(() -> check.inclusion(5, Long.MAX_VALUE, ODD, path, ODD))
        .hasMessage("its bytes and path do not lead to the signed root");
    path.add(ODD);
    assertThatThrownBy(() -> check.inclusion(5, Long.MAX_VALUE, ODD, path, ODD))
        .hasMessage("the path has 64 hashes, expected at most 63");
    assertThat(path).hasSize(64);
  }
}
