package witnessmark.ledger.verify;

import java.io.IOException;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;

/**
 * Rows that a thread of its own reads ahead of whoever goes through them: a bounded number of
 * batches, each bounded in rows and bytes.
 */
final class ReadAhead implements Rows {
  private static final int BATCHES = 4;
  private static final int ROWS = 256;
  private static final int BYTES = 1 << 20;
  private static final long POLL_MS = 100;

  /**
   * What was read at a time.
   *
   * @param rows the first {@code size} count, each with a value a column
   * @param last whether nothing follows
   * @param failure why nothing follows, else null
   */
  private record Batch(Object[][] rows, int size, boolean last, Throwable failure) {}

  private final Rows source;
  private final int columns;
  private final BlockingQueue<Batch> ready = new ArrayBlockingQueue<>(BATCHES);
  private final Thread thread;
  private volatile boolean closed;
  private Batch batch = new Batch(new Object[0][], 0, false, null);
  private int at = -1;

  /**
   * Begins to read.
   *
   * @param columns how many each row has
   */
  ReadAhead(Rows source, int columns) {
    this.source = source;
    this.columns = columns;
    this.thread = new Thread(this::run, "read-ahead");
    thread.setDaemon(true);
    thread.start();
  }

  private void run() {
    boolean more = true;
    while (more && !closed) {
      Batch next = read();
      more = !next.last();
      try {
        while (!closed && !ready.offer(next, POLL_MS, TimeUnit.MILLISECONDS)) {
          // Full: whoever goes through the rows is behind.
        }
      } catch (InterruptedException e) {
        return;
      }
    }
  }

  private Batch read() {
    Object[][] rows = new Object[ROWS][];
    int size = 0;
    long bytes = 0;
    try {
      while (size < ROWS && bytes < BYTES) {
        if (!source.next()) {
          return new Batch(rows, size, true, null);
        }
        Object[] row = new Object[columns];
        for (int i = 0; i < columns; i++) {
          row[i] = source.value(i);
          bytes += row[i] instanceof byte[] blob ? blob.length : 0;
          bytes += row[i] instanceof String text ? text.length() : 0;
        }
        rows[size++] = row;
      }
      return new Batch(rows, size, false, null);
    } catch (IOException | RuntimeException | Error e) {
      return new Batch(rows, size, true, e);
    }
  }

  @Override
  public boolean next() throws IOException {
    at++;
    while (at >= batch.size()) {
      if (batch.last()) {
        raise(batch.failure());
        return false;
      }
      batch = take();
      at = 0;
    }
    return true;
  }

  private Batch take() throws IOException {
    try {
      return ready.take();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("reading the entries was interrupted", e);
    }
  }

  private static void raise(Throwable failure) throws IOException {
    if (failure instanceof IOException io) {
      throw io;
    } else if (failure instanceof RuntimeException runtime) {
      throw runtime;
    } else if (failure instanceof Error error) {
      throw error;
    }
  }

  @Override
  public Object value(int column) {
    return batch.rows()[at][column];
  }

  @Override
  public void close() {
    closed = true;
    ready.clear();
    try {
      // The source must not be closed under the thread that reads it.
      thread.join();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    source.close();
  }
}
