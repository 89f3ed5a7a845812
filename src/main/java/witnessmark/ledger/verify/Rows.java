package witnessmark.ledger.verify;

import java.io.Closeable;
import java.io.IOException;

/** Rows of one table, read once from the first to the last. */
public interface Rows extends Closeable {
  /**
   * Goes to the next row; false after the last.
   *
   * @throws IOException when the rest cannot be read; its message says which table and why
   */
  boolean next() throws IOException;

  /**
   * What a column of this row holds as stored: {@code Long}, {@code Double}, {@code String}, {@code
   * byte[]} or null. Text that is not valid UTF-8 comes as its bytes.
   *
   * @param column from 0, in the order the {@link RawLedger} method names
   */
  Object value(int column) throws IOException;

  @Override
  void close();
}
