package witnessmark.daemon;

import java.time.Duration;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import witnessmark.systemd.ServiceManager;

/**
 * Tells the service manager that the daemon listens, how it is, and, as long as the writer turns,
 * that it lives.
 *
 * <p>A writer that waits turns: for messages, for a disk with room, for another process that holds
 * the log. Starting anew would change nothing about these. One that does not come back from a call
 * does not turn, and neither does one that died; for both, starting anew is the cure, and what was
 * not acknowledged is sent again.
 */
public final class Attendant implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Attendant.class);
  private static final Duration UNWATCHED = Duration.ofSeconds(10);

  private final ServiceManager manager;
  private final Supplier<String> standing;
  private final LongSupplier turns;
  private final ScheduledExecutorService clock =
      Executors.newSingleThreadScheduledExecutor(Attendant::thread);
  private long seen = -1;
  private boolean stuck;

  /**
   * @param standing how the daemon is, in one line
   * @param turns how often the writer has turned
   */
  public Attendant(ServiceManager manager, Supplier<String> standing, LongSupplier turns) {
    this.manager = manager;
    this.standing = standing;
    this.turns = turns;
  }

  private static Thread thread(Runnable work) {
    Thread thread = new Thread(work, "attendant");
    thread.setDaemon(true);
    return thread;
  }

  /** Says that the daemon is ready, and goes on telling how it is. */
  public void ready() {
    manager.ready(standing.get());
    // Four chances: one turn can last as long as SQLite waits for a lock, twice.
    long every = manager.patience().map(p -> p.dividedBy(4)).orElse(UNWATCHED).toMillis();
    clock.scheduleAtFixedRate(this::look, every, every, TimeUnit.MILLISECONDS);
  }

  private void look() {
    try {
      long now = turns.getAsLong();
      boolean turned = now != seen;
      seen = now;
      if (turned) {
        manager.alive(standing.get());
      } else {
        manager.standing("The writer is stuck: nothing is recorded");
      }
      if (!turned && !stuck) {
        LOG.atError().log("the writer is stuck; no sign of life is given");
      }
      stuck = !turned;
    } catch (RuntimeException e) { // or the clock would never ask again
      LOG.atError().log("the service manager was not told", e);
    }
  }

  /** Says that the daemon is about to end. */
  @Override
  public void close() {
    clock.shutdownNow();
    manager.stopping();
  }
}
