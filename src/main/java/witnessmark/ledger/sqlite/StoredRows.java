package witnessmark.ledger.sqlite;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Set;
import witnessmark.ledger.verify.Rows;

/** The rows of a query, each value as SQLite stores it. */
final class StoredRows implements Rows {
  private final String where;
  private final Statement statement;
  private final ResultSet result;
  private final Set<Integer> blobs;

  /**
   * @param blobs columns, from 0, that are known to hold a BLOB or NULL: to ask each time costs as
   *     much as to read it
   */
  StoredRows(String where, Statement statement, ResultSet result, Set<Integer> blobs) {
    this.where = where;
    this.statement = statement;
    this.result = result;
    this.blobs = blobs;
  }

  static IOException failure(String where, SQLException e) {
    return new IOException(
        where
            + ": "
            + e.getMessage()
            + "; put a backup in its place with witnessmark ledger restore",
        e);
  }

  @Override
  public boolean next() throws IOException {
    try {
      return result.next();
    } catch (SQLException e) {
      throw failure(where, e);
    }
  }

  @Override
  public Object value(int column) throws IOException {
    try {
      if (blobs.contains(column)) {
        return result.getBytes(column + 1);
      }
      Object value = result.getObject(column + 1);
      if (value instanceof Integer integer) {
        return integer.longValue();
      }
      return value instanceof String text ? text(text, column) : value;
    } catch (SQLException e) {
      throw failure(where, e);
    }
  }

  /** The driver decodes bad UTF-8 to U+FFFD, by which different bytes would look the same. */
  private Object text(String text, int column) throws SQLException {
    if (text.indexOf('\uFFFD') < 0) {
      return text;
    }
    byte[] bytes = result.getBytes(column + 1);
    try {
      StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes));
      return text;
    } catch (CharacterCodingException e) {
      return bytes;
    }
  }

  @Override
  public void close() {
    try {
      result.close();
      statement.close();
    } catch (SQLException e) {
      // Nothing was written, so nothing can be lost by a close that fails.
      return;
    }
  }
}
