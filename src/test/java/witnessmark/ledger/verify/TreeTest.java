package witnessmark.ledger.verify;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class TreeTest {
  private final Hashes hashes = new Hashes();
  private final List<String> full = new ArrayList<>();
  private final Tree tree =
      new Tree(hashes, (height, index, hash) -> full.add(height + "/" + index + " " + hex(hash)));

  @Test
  void everyPrefixOfTheReferenceLeavesHasItsPublishedRoot() {
    for (int n = 0; n <= 8; n++) {
      assertThat(hex(tree.root())).as("root of %d leaves", n).isEqualTo(TreeVectors.ROOTS.get(n));
      if (n < 8) {
        add(TreeVectors.LEAVES.get(n));
      }
    }
  }

  @Test
  void leafAndNodeHashesAreThoseOfTheReferenceCode() {
    // Source: transparency-dev/merkle at 417fb0c, rfc6962/rfc6962_test.go, read there.
    byte[] hash = new byte[32];
    hashes.leaf("L123456".getBytes(StandardCharsets.US_ASCII), hash);
    assertThat(hex(hash))
        .isEqualTo("395aa064aa4c29f7010acfe3f25db9485bbd4b91897b6ad7ad547639252b4d56");
  }

  @Test
  void aTreeOfAnySizeHasTheRootOfTheRecursiveDefinition() {
    List<byte[]> leaves = new ArrayList<>();
    Random random = new Random(6962);
    for (int n = 0; n < 300; n++) {
      byte[] leaf = new byte[random.nextInt(90)];
      random.nextBytes(leaf);
      leaves.add(leaf);
      add(leaf);
      assertThat(tree.root()).as("root of %d leaves", n + 1).isEqualTo(ExportRoot.mth(leaves));
    }
  }

  @Test
  void fullSubtreesAreToldWhenTheirLastLeafComes() {
    TreeVectors.LEAVES.subList(0, 5).forEach(this::add);
    assertThat(full)
        .hasSize(3)
        .startsWith("1/0 " + TreeVectors.ROOTS.get(2))
        .endsWith("2/0 " + TreeVectors.ROOTS.get(4));
    assertThat(full.get(1)).startsWith("1/1 ");
  }

  private void add(byte[] data) {
    byte[] leaf = new byte[32];
    hashes.leaf(data, leaf);
    tree.add(leaf);
  }

  private static String hex(byte[] bytes) {
    return HexFormat.of().formatHex(bytes);
  }
}
