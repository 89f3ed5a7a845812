package witnessmark.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import witnessmark.ledger.verify.ExportRoot;
import witnessmark.ledger.verify.NaiveTree;
import witnessmark.ledger.verify.PathVectors;
import witnessmark.ledger.verify.TreeVectors;

class PathsTest {
  private static Paths over(List<byte[]> leaves) {
    return new Paths(
        (height, index) -> {
          int from = (int) (index << height);
          return ExportRoot.mth(leaves.subList(from, from + (1 << height)));
        });
  }

  private static List<String> hex(List<byte[]> hashes) {
    return hashes.stream().map(HexFormat.of()::formatHex).toList();
  }

  @Test
  void rootsAreThosePublished() {
    for (int n = 0; n <= 8; n++) {
      assertThat(hex(List.of(over(TreeVectors.LEAVES).root(n))))
          .containsExactly(TreeVectors.ROOTS.get(n));
    }
  }

  @Test
  void inclusionPathsAreThosePublished() {
    for (PathVectors.Case c : PathVectors.INCLUSION) {
      assertThat(hex(over(TreeVectors.LEAVES).inclusion(c.first(), c.size())))
          .as("(%d, %d)", c.first(), c.size())
          .isEqualTo(hex(c.path()));
    }
  }

  @Test
  void consistencyPathsAreThosePublished() {
    for (PathVectors.Case c : PathVectors.CONSISTENCY) {
      assertThat(hex(over(TreeVectors.LEAVES).consistency(c.first(), c.size())))
          .as("(%d, %d)", c.first(), c.size())
          .isEqualTo(hex(c.path()));
    }
  }

  @Test
  void pathsThroughTreesOfAnySizeAreThoseOfTheRecursiveDefinition() {
    long seed = new Random().nextLong();
    Random random = new Random(seed);
    List<byte[]> leaves = new ArrayList<>();
    for (int n = 1; n <= 70; n++) {
      byte[] leaf = new byte[random.nextInt(40)];
      random.nextBytes(leaf);
      leaves.add(leaf);
      Paths paths = over(leaves);
      for (int m = 0; m < n; m++) {
        List<byte[]> path = paths.inclusion(m, n);
        String what = "seed " + seed + ", (" + m + ", " + n + ")";
        assertThat(hex(path)).as(what).isEqualTo(hex(NaiveTree.path(m, leaves)));
        assertThat(Paths.root(m, n, Hashing.leaf(leaves.get(m)), path))
            .as(what)
            .isEqualTo(ExportRoot.mth(leaves));
        assertThat(hex(paths.consistency(m + 1, n)))
            .as(what)
            .isEqualTo(hex(NaiveTree.proof(m + 1, leaves)));
      }
    }
  }

  @Test
  void nothingIsMadeForWhatIsNotInTheTree() {
    Paths paths = over(TreeVectors.LEAVES);
    for (long n : Arrays.asList(-1L, 8L, Long.MAX_VALUE)) {
      assertThatThrownBy(() -> paths.inclusion(n, 8)).isInstanceOf(IllegalArgumentException.class);
    }
    for (long m : Arrays.asList(-1L, 0L, 9L)) {
      assertThatThrownBy(() -> paths.consistency(m, 8))
          .isInstanceOf(IllegalArgumentException.class);
    }
  }
}
