package witnessmark.link.serial;

import static java.nio.charset.StandardCharsets.US_ASCII;

import java.time.Instant;
import java.util.concurrent.CountDownLatch;

/** Everything a line said, with a {@code /} wherever it broke. */
final class Tape implements ChunkSink {
  private final StringBuilder text = new StringBuilder();
  private volatile boolean blocked;
  private volatile CountDownLatch gate = new CountDownLatch(0);

  /** Whether a chunk waits at a gate. */
  boolean blocked() {
    return blocked;
  }

  /** Makes every chunk from now on block until the latch opens. */
  void block(CountDownLatch latch) {
    gate = latch;
  }

  @Override
  public void chunk(byte[] bytes, int length, Instant at) {
    blocked = gate.getCount() > 0;
    try {
      gate.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return;
    }
    synchronized (text) {
      text.append(new String(bytes, 0, length, US_ASCII));
    }
  }

  @Override
  public void lineClosed() {
    synchronized (text) {
      text.append('/');
    }
  }

  @Override
  public String toString() {
    synchronized (text) {
      return text.toString();
    }
  }
}
