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
   * One that may write cursors, and stays.
   *
   * @throws LedgerException when it cannot be had
   */
  static Connection open(Path file) {
    Connection connection = Database.open(file);
    try {
      // only the cursor is ever written here, and a cursor that is a little old does no harm
      Database.execute(connection, "PRAGMA synchronous=NORMAL");
      return connection;
    } catch (SQLException e) {
      ReadOnly.close(connection);
      throw Trouble.of("read", file, e);
    }
  }

  /**
   * One for a short look, which where nothing can be written only reads. It may not see what is
   * written later.
   *
   * @throws LedgerException when not even that can be had
   */
  static Connection briefly(Path file) {
    try {
      return open(file);
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
