package witnessmark.ledger.sqlite;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import witnessmark.ledger.LedgerException;

/** A connection for whoever looks at a log, and writes cursors at most. */
final class Looking {
  private Looking() {}

  /**
   * One that may write; where nothing can be written, one that reads.
   *
   * @throws LedgerException when not even that can be had
   */
  static Connection open(Path file) {
    try {
      Connection connection = Database.open(file);
      // only the cursor is ever written here, and a cursor that is a little old does no harm
      Database.execute(connection, "PRAGMA synchronous=NORMAL");
      return connection;
    } catch (SQLException e) {
      throw Trouble.of("read", file, e);
    } catch (LedgerException e) {
      if (e.getCause() instanceof SQLException s && Trouble.nothingBeside(s)) {
        return readOnly(file);
      }
      throw e;
    }
  }

  private static Connection readOnly(Path file) {
    try {
      return ReadOnly.connect(file);
    } catch (IOException e) {
      throw new LedgerException(e.getMessage() + ".", e);
    }
  }
}
