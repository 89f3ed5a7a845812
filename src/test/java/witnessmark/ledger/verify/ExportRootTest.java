package witnessmark.ledger.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Base64;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;

class ExportRootTest {
  @Test
  void everyPrefixOfTheReferenceLeavesHasItsPublishedRoot() {
    List<String> lines = new ArrayList<>();
    for (int n = 0; n <= 8; n++) {
      assertThat(HexFormat.of().formatHex(ExportRoot.of(lines)))
          .as("root of %d leaves", n)
          .isEqualTo(TreeVectors.ROOTS.get(n));
      if (n < 8) {
        lines.add(line(n, TreeVectors.LEAVES.get(n)));
      }
    }
  }

  @Test
  void aMissingEntryIsRefused() {
    List<String> lines = List.of(line(0, new byte[1]), line(2, new byte[1]));
    assertThatThrownBy(() -> ExportRoot.of(lines))
        .hasMessage(
            "expected {\"entry\":1,\"leaf\":\"base64\"}, found {\"entry\":2,\"leaf\":\"AA==\"}");
  }

  private static String line(int n, byte[] leaf) {
    return "{\"entry\":" + n + ",\"leaf\":\"" + Base64.getEncoder().encodeToString(leaf) + "\"}";
  }
}
