package witnessmark.ledger.verify;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.ledger.sqlite.RawReader;

/** What the tests of the verifier on real files share. */
abstract class LedgerTest {
  @TempDir Path directory;

  LedgerFile ledger(int size) throws SQLException {
    return LedgerFile.write(directory.resolve("ledger.db"), Shop.of(size));
  }

  static Report verify(LedgerFile ledger) throws IOException {
    return verify(ledger, ledger.key().verifierKey());
  }

  static Report verify(LedgerFile ledger, String key) throws IOException {
    try (RawReader reader = RawReader.open(ledger.file())) {
      return Verifier.verify(new Loose(reader), key);
    }
  }

  static List<String> found(LedgerFile ledger) throws IOException {
    return verify(ledger).findings().stream().map(Finding::toString).toList();
  }
}
