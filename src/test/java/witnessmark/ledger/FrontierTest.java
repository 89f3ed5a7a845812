package witnessmark.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import witnessmark.ledger.verify.ExportRoot;

class FrontierTest {
  private static final Frontier.TileSink NO_TILES = (level, index, hash) -> {};

  /**
   * Leaves and roots of the Certificate Transparency reference code, as kept in
   * transparency-dev/merkle, testonly/constants.go (read in a public copy, and computed
   * independently): trees of 0 to 8 leaves after RFC 6962, section 2.1.
   */
  private static final List<String> LEAVES =
      List.of(
          "",
          "00",
          "10",
          "2021",
          "3031",
          "40414243",
          "5051525354555657",
          "606162636465666768696a6b6c6d6e6f");

  private static final List<String> ROOTS =
      List.of(
          "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855",
          "6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d",
          "fac54203e7cc696cf0dfcb42c92a1d9dbaf70ad9e621f4bd8d98662f00e3c125",
          "aeb6bcfe274b70a14fb067a5e5578264db0fa9b51af5e0ba159158f329e06e77",
          "d37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7",
          "4e3bbb1f7b478dcfe71fb631631519a3bca12c9aefca1612bfce4c13a86264d4",
          "76e67dadbcdf1e10e1b74ddc608abd2f98dfb16fbce75277b5232a127f2087ef",
          "ddb89be403809e325750d3d263cd78929c2942b7942a34b77e122c9594a74c8c",
          "5dc9da79a70659a9ad559cb701ded9a2ab9d823aad2f4960cfe370eff4604328");

  @Test
  void theRootsOfThePublishedTreesAreReproduced() {
    Frontier frontier = new Frontier();
    assertThat(HexFormat.of().formatHex(frontier.root())).isEqualTo(ROOTS.get(0));
    for (int i = 0; i < LEAVES.size(); i++) {
      frontier.append(Hashing.leaf(HexFormat.of().parseHex(LEAVES.get(i))), NO_TILES);
      assertThat(HexFormat.of().formatHex(frontier.root())).isEqualTo(ROOTS.get(i + 1));
    }
  }

  @Test
  void everyRootIsThatOfTheRecursiveDefinition() {
    Random random = new Random(6962);
    Frontier frontier = new Frontier();
    List<byte[]> leaves = new ArrayList<>();
    for (int size = 1; size <= 700; size++) {
      byte[] entry = new byte[random.nextInt(40)];
      random.nextBytes(entry);
      leaves.add(entry);
      frontier.append(Hashing.leaf(entry), NO_TILES);
      assertThat(frontier.root()).as("size %d", size).isEqualTo(ExportRoot.mth(leaves));
    }
  }

  @Test
  void aTileIsTheRootOfItsOwnLeavesAndStandsForThem() {
    List<byte[]> leaves = new ArrayList<>();
    List<byte[]> tiles = new ArrayList<>();
    Frontier leafByLeaf = new Frontier();
    Frontier byTile = new Frontier();
    for (int i = 0; i < 3 * 256; i++) {
      byte[] entry = {(byte) i, (byte) (i >> 8)};
      leaves.add(entry);
      leafByLeaf.append(
          Hashing.leaf(entry),
          (level, index, hash) -> {
            assertThat(level).isEqualTo(1);
            assertThat(index).isEqualTo(tiles.size());
            tiles.add(hash);
          });
    }
    assertThat(tiles).hasSize(3);
    assertThat(tiles.get(1)).isEqualTo(ExportRoot.mth(leaves.subList(256, 512)));
    tiles.forEach(hash -> byTile.appendTile(1, hash));
    assertThat(byTile.root()).isEqualTo(leafByLeaf.root());
    assertThat(byTile.size()).isEqualTo(leafByLeaf.size());
  }

  @Test
  void aTileCannotFollowAnIncompleteOne() {
    Frontier frontier = new Frontier();
    frontier.append(Hashing.leaf(new byte[0]), NO_TILES);
    assertThatThrownBy(() -> frontier.appendTile(1, new byte[32]))
        .hasMessage("a tile of level 1 cannot follow size 1");
  }
}
