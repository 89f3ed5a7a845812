package witnessmark.link.mqtt;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import witnessmark.link.Backoff;
import witnessmark.link.Inbox;
import witnessmark.link.LinkState;
import witnessmark.link.LinkStatus;
import witnessmark.link.Outlet;
import witnessmark.link.Post;
import witnessmark.link.Standing;

/**
 * The link to one MQTT broker: brings messages to the inbox, publishes, and comes back by itself
 * after any failure. The broker keeps every QoS 1 message until it is acknowledged here.
 */
public final class MqttLink implements Outlet, AutoCloseable {
  private static final Logger logger = LoggerFactory.getLogger(MqttLink.class);
  private static final Duration FIRST_PAUSE = Duration.ofMillis(250);
  private static final Duration LONGEST_PAUSE = Duration.ofSeconds(30);
  private static final Duration STEADY = Duration.ofSeconds(5);
  private static final Duration FULL_GRACE = Duration.ofSeconds(5);
  private static final Duration CLOSE_GRACE = Duration.ofSeconds(2);
  private static final Duration CLOSE_LIMIT = Duration.ofSeconds(8);

  private final MqttSettings settings;
  private final Inbox inbox;
  private final Supplier<Instant> clock;
  private final Standing standing;
  private final Backoff backoff = new Backoff(FIRST_PAUSE, LONGEST_PAUSE, new SplittableRandom());
  private final Thread loop;

  private volatile boolean held;
  private volatile boolean closed;
  private volatile Session session;
  private String trouble = "";

  /**
   * @throws IllegalArgumentException when a certificate file cannot be used
   */
  public MqttLink(MqttSettings settings, Inbox inbox, Supplier<Instant> clock) {
    this.settings = settings;
    this.inbox = inbox;
    this.clock = clock;
    this.standing = new Standing(settings.name(), clock);
    if (settings.tls()) {
      Tls.sockets(settings);
    }
    this.loop = new Thread(this::run, "link-" + settings.name());
    this.loop.setDaemon(true);
  }

  /** Begins to connect, and returns at once. */
  public void start() {
    loop.start();
  }

  /**
   * Leaves the broker and stays away until {@link #resume}: for a bridge that cannot record.
   * Returns at once. What was taken and not acknowledged by then comes again.
   */
  public void hold() {
    held = true;
    LockSupport.unpark(loop);
  }

  /** Ends {@link #hold}. */
  public void resume() {
    held = false;
    LockSupport.unpark(loop);
  }

  public LinkStatus status() {
    return standing.status();
  }

  @Override
  public boolean connected() {
    Session now = session;
    return now != null && !now.over();
  }

  /** {@inheritDoc} Waits at most about 5 seconds; false at once while not connected. */
  @Override
  public boolean publish(String topic, byte[] payload, boolean retained) {
    Session now = session;
    return now != null && !now.over() && now.publish(topic, payload, retained);
  }

  /** {@inheritDoc} Waits at most about 5 seconds for each; 0 at once while not connected. */
  @Override
  public int publish(List<Post> posts) {
    Session now = session;
    return now == null || now.over() ? 0 : now.publish(posts);
  }

  /** Says goodbye to the broker and ends for good, within about 8 seconds. */
  @Override
  public void close() {
    closed = true;
    LockSupport.unpark(loop);
    try {
      loop.join(CLOSE_LIMIT.toMillis());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    standing.become(LinkState.CLOSED, "closed");
  }

  private void run() {
    while (!closed) {
      if (held) {
        standing.become(
            LinkState.WAITING,
            "away until the bridge can record again; the broker keeps the messages");
        waitWhile(() -> held);
      } else if (!inbox.hasRoom()) {
        standing.become(
            LinkState.WAITING,
            "away until the bridge has caught up; the broker keeps the messages");
        waitWhile(() -> !inbox.hasRoom());
      } else {
        stay();
      }
    }
  }

  /** One connection, from the attempt to its end, and the pause after a failure. */
  private void stay() {
    standing.become(
        LinkState.CONNECTING,
        trouble.isEmpty() ? "connecting to " + settings.url() : "trying again; " + trouble);
    try {
      Session fresh = new Session(settings, inbox, clock, () -> LockSupport.unpark(loop));
      try {
        fresh.open(() -> closed);
        serve(fresh);
      } finally {
        session = null;
        fresh.leave(grace(fresh));
      }
      trouble = fresh.lost().orElse("");
    } catch (BrokerException e) {
      trouble = e.getMessage();
    } catch (RuntimeException e) {
      logger.atError().addKeyValue("link", settings.name()).setCause(e).log("link failed");
      trouble = settings.url() + ": the link failed: " + e;
    }
    if (!trouble.isEmpty() && !closed) {
      standing.become(LinkState.WAITING, trouble);
      long until = System.nanoTime() + backoff.next().toNanos();
      waitWhile(() -> System.nanoTime() < until);
    }
  }

  private void serve(Session fresh) {
    if (closed || fresh.lost().isPresent()) {
      return;
    }
    session = fresh;
    long since = System.nanoTime();
    standing.become(LinkState.UP, "connected to " + settings.url());
    waitWhile(() -> !held && !fresh.over());
    // A connection that breaks at once, again and again, must not be retried without pause.
    if (fresh.lost().isEmpty() || System.nanoTime() - since > STEADY.toNanos()) {
      backoff.reset();
    }
  }

  private Duration grace(Session fresh) {
    if (closed) {
      return CLOSE_GRACE;
    }
    return fresh.full() ? FULL_GRACE : Duration.ZERO;
  }

  private void waitWhile(BooleanSupplier condition) {
    while (!closed && condition.getAsBoolean()) {
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(50));
    }
  }
}
