package witnessmark.ledger.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import witnessmark.ledger.sqlite.RawReader;

class VerifierTest extends LedgerTest {
  // 65 793 fills a tile of level 2 and one of level 1 after it.
  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3, 7, 100, 255, 256, 257, 600, 65_793})
  void anUntouchedLedgerVerifies(int size) throws Exception {
    Shop shop = Shop.of(size);
    LedgerFile ledger = LedgerFile.write(directory.resolve("ledger.db"), shop);
    Report report = verify(ledger);
    assertThat(report.findings()).isEmpty();
    assertThat(report.verifies()).isTrue();
    assertThat(report.unlisted()).isZero();
    assertThat(report.size()).isEqualTo(size);
    assertThat(report.root())
        .isEqualTo(ExportRoot.mth(shop.entries.stream().map(Made::bytes).toList()));
  }

  @Test
  void progressIsToldAndEndsWithTheSize() throws Exception {
    LedgerFile ledger = ledger(5000);
    List<Long> told = new ArrayList<>();
    try (RawReader reader = RawReader.open(ledger.file())) {
      Verifier.verify(new Loose(reader), ledger.key().verifierKey(), List.of(), told::add);
    }
    assertThat(told).containsExactly(4096L, 5000L);
  }

  @Test
  void aVerifierKeyThatIsNoneIsRefusedBeforeAnythingIsRead() throws Exception {
    LedgerFile ledger = ledger(3);
    assertThatThrownBy(() -> verify(ledger, "nonsense"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage(
            "verifier key: expected NAME+KEYID+BASE64 as in ledger.pub, found \"nonsense\": it has"
                + " another form; use the key as it was published");
  }

  @Test
  void findingsBeyondTheListAreCounted() throws Exception {
    LedgerFile ledger = ledger(600);
    ledger.tamper("UPDATE trace SET station = 'bench-9'");
    ledger.tamper("UPDATE entry SET link = zeroblob(32) WHERE n = 599");
    Report report = verify(ledger);
    assertThat(report.findings()).hasSize(Verifier.LISTED);
    assertThat(report.unlisted()).isEqualTo(601 - Verifier.LISTED);
    assertThat(report.findings().get(0).place()).isEqualTo(Place.entry(599));
  }
}
