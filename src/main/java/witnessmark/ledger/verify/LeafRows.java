package witnessmark.ledger.verify;

import java.io.IOException;

/**
 * Rows of table {@code entry} with one column more: the leaf hash of {@code bytes}, null where they
 * are no BLOB. Whoever reads the rows ahead also hashes them, so that two processors share the
 * work.
 */
final class LeafRows implements Rows {
  /** {@code n, bytes, link} and the leaf hash. */
  static final int COLUMNS = 4;

  private static final int BYTES = 1;
  private static final int LEAF = 3;

  private final Rows source;
  private final Hashes hashes = new Hashes();
  private Object bytes;

  LeafRows(Rows source) {
    this.source = source;
  }

  @Override
  public boolean next() throws IOException {
    bytes = null;
    return source.next();
  }

  @Override
  public Object value(int column) throws IOException {
    if (column == LEAF) {
      return leaf(bytes());
    }
    return column == BYTES ? bytes() : source.value(column);
  }

  private Object bytes() throws IOException {
    if (bytes == null) {
      bytes = source.value(BYTES);
    }
    return bytes;
  }

  private byte[] leaf(Object stored) {
    if (stored instanceof byte[] data) {
      byte[] leaf = new byte[Hashes.LENGTH];
      hashes.leaf(data, leaf);
      return leaf;
    }
    return null;
  }

  @Override
  public void close() {
    source.close();
  }
}
