package witnessmark.ledger.sqlite;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.ledger.LedgerException;
import witnessmark.ledger.LedgerFiles;

class StillTest {
  @TempDir private Path directory;

  @Test
  void whatWasReadWithoutLocksCountsOnlyWhereNobodyWroteMeanwhile() throws Exception {
    LedgerFiles files = LogOf.begun(directory, 3);
    String url = "jdbc:sqlite:file:" + files.database();
    Still still = new Still(files.database());
    try (Connection locked = DriverManager.getConnection(url + "?mode=ro");
        Connection unlocked = DriverManager.getConnection(url + ReadOnly.IMMUTABLE)) {
      assertThatCode(() -> still.check(unlocked)).doesNotThrowAnyException();
      try (SqliteLedger ledger = SqliteLedger.open(files)) {
        LogOf.grow(ledger, 3, 400);
      }
      assertThatCode(() -> still.check(locked)).doesNotThrowAnyException();
      assertThatThrownBy(() -> still.check(unlocked))
          .isInstanceOf(LedgerException.class)
          .hasMessage(
              "The log "
                  + files.database()
                  + " was written to while it was read by a user who has no right to keep a writer"
                  + " off. Run this again.");
    }
  }
}
