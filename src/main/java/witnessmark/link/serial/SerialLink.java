package witnessmark.link.serial;

import java.time.Instant;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import witnessmark.link.LinkState;
import witnessmark.link.LinkStatus;
import witnessmark.link.Standing;

/**
 * The link to one serial port: hands over bytes as they come, sends answers, and opens the port
 * again by itself when the cable was pulled.
 */
public final class SerialLink implements AutoCloseable {
  private static final Logger logger = LoggerFactory.getLogger(SerialLink.class);
  private static final int READ_BYTES = 4096;
  private static final long REOPEN_NANOS = TimeUnit.MILLISECONDS.toNanos(500);
  private static final long CLOSE_MILLIS = 3_000;

  private final SerialSettings settings;
  private final PortFinder finder;
  private final ChunkSink sink;
  private final Supplier<Instant> clock;
  private final Standing standing;
  private final Thread reader;

  private volatile boolean closed;
  private volatile Sending sending;

  public SerialLink(
      SerialSettings settings, PortFinder finder, ChunkSink sink, Supplier<Instant> clock) {
    this.settings = settings;
    this.finder = finder;
    this.sink = sink;
    this.clock = clock;
    this.standing = new Standing(settings.name(), clock);
    this.reader = new Thread(this::run, "link-" + settings.name());
    this.reader.setDaemon(true);
  }

  /** Begins to open the port, and returns at once. */
  public void start() {
    reader.start();
  }

  public LinkStatus status() {
    return standing.status();
  }

  /**
   * Sends bytes to the device, within about 2 seconds.
   *
   * @return false when the port is not open or did not take them all
   */
  public boolean send(byte[] bytes) {
    Sending now = sending;
    return now != null && now.send(bytes);
  }

  /**
   * Ends for good, within about 3 seconds. The reader is interrupted, so that a sink that blocks
   * can return.
   */
  @Override
  public void close() {
    closed = true;
    LockSupport.unpark(reader);
    try {
      // A read returns by itself; only a blocking sink needs the interrupt.
      reader.join(CLOSE_MILLIS / 3);
      reader.interrupt();
      reader.join(CLOSE_MILLIS * 2 / 3);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    standing.become(LinkState.CLOSED, "closed");
  }

  private void run() {
    standing.become(LinkState.CONNECTING, "opening port " + settings.port().text());
    while (!closed) {
      try {
        listen();
      } catch (PortException e) {
        standing.become(LinkState.WAITING, e.getMessage());
      } catch (RuntimeException e) {
        logger.atError().addKeyValue("link", settings.name()).setCause(e).log("link failed");
        standing.become(LinkState.WAITING, "the link failed: " + e);
      }
      long until = System.nanoTime() + REOPEN_NANOS;
      while (!closed && System.nanoTime() < until) {
        LockSupport.parkNanos(until - System.nanoTime());
      }
    }
  }

  /** One opening of the port, until it is broken or the link is closed. */
  private void listen() throws PortException {
    String path = settings.port().locate(finder);
    try (Line line = Line.open(path, settings);
        Sending out = new Sending(line, settings)) {
      sending = out;
      standing.become(LinkState.UP, "listening on " + path);
      byte[] buffer = new byte[READ_BYTES];
      int length = 0;
      while (!closed && length >= 0) {
        length = line.read(buffer);
        if (length > 0) {
          sink.chunk(buffer, length, clock.get());
        }
      }
    } finally {
      if (sending != null) {
        sending = null;
        sink.lineClosed();
      }
    }
    if (!closed) {
      standing.become(LinkState.WAITING, "port " + path + " went away; plug the cable in again");
    }
  }
}
