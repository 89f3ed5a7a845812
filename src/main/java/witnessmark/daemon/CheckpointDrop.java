package witnessmark.daemon;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import witnessmark.ledger.FileFault;
import witnessmark.ledger.LedgerException;
import witnessmark.ledger.Reading;

/**
 * Drops the newest checkpoint into a directory when the daemon starts, every so often, and when it
 * stops.
 */
final class CheckpointDrop implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(CheckpointDrop.class);
  private static final Duration AGAIN = Duration.ofSeconds(30);
  private static final Duration LONGEST = Duration.ofSeconds(5);

  private final Path directory;
  private final DropDirectory drops;
  private final Duration every;
  private final Supplier<Reading> opening;
  private final CountDownLatch stop = new CountDownLatch(1);
  private final Thread thread = new Thread(this::run, "checkpoints");
  private volatile String warning;

  /**
   * @param opening opens the log for reading
   */
  CheckpointDrop(Path directory, Duration every, Supplier<Reading> opening) {
    this.directory = directory;
    this.drops = new DropDirectory(directory);
    this.every = every;
    this.opening = opening;
    thread.setDaemon(true);
  }

  void start() {
    thread.start();
  }

  /** Why the newest checkpoint could not be dropped. */
  Optional<String> warning() {
    return Optional.ofNullable(warning);
  }

  private void run() {
    boolean stopping = false;
    while (!stopping) {
      boolean dropped = drop();
      Duration pause = dropped || every.compareTo(AGAIN) < 0 ? every : AGAIN;
      try {
        stopping = stop.await(pause.toMillis(), TimeUnit.MILLISECONDS);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        return;
      }
    }
    drop();
  }

  private boolean drop() {
    try (Reading reading = opening.get()) {
      Optional<String> note = reading.checkpoint();
      if (note.isPresent()) {
        drops
            .put(note.get())
            .ifPresent(f -> LOG.atInfo().addKeyValue("file", f).log("checkpoint dropped"));
      }
      warning = null;
      return true;
    } catch (IOException e) {
      return failed(
          "No checkpoint can be dropped into "
              + directory
              + ": "
              + FileFault.why(e)
              + ". Let the user who runs the daemon write to it; for the service also by"
              + " ReadWritePaths="
              + directory);
    } catch (DropDirectory.ContradictionException | LedgerException e) {
      return failed(e.getMessage());
    }
  }

  private boolean failed(String why) {
    if (!why.equals(warning)) {
      LOG.atError().addKeyValue("reason", why).log("checkpoint not dropped");
    }
    warning = why;
    return false;
  }

  @Override
  public void close() {
    stop.countDown();
    try {
      thread.join(LONGEST.toMillis());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
