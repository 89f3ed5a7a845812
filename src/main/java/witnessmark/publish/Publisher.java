package witnessmark.publish;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.job.Shop;
import witnessmark.ledger.LedgerException;
import witnessmark.ledger.Reading;
import witnessmark.ledger.Stored;
import witnessmark.link.Outlet;
import witnessmark.link.Post;
import witnessmark.pipeline.Replay;

/**
 * Tells one outlet of every judged event and every scan, in order, and of what each station waits
 * for.
 *
 * <p>The log itself is the outbox: a cursor says how far it has been told, and moves only after the
 * outlet has acknowledged. A crash in between makes the last verdicts be told again, with the same
 * id.
 */
public final class Publisher implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Publisher.class);
  private static final Duration LOOK = Duration.ofMillis(200);
  private static final Duration KEEP = Duration.ofSeconds(1);
  private static final int CHUNK = 256;
  private static final Duration GRACE = Duration.ofSeconds(3);
  private static final Duration LONGEST = Duration.ofSeconds(10);

  private final String name;
  private final Outlet outlet;
  private final Predicate<String> stations;
  private final Supplier<Reading> opening;
  private final CheckpointTopic checkpoints;
  private final Supplier<HealthNow> health;
  private final Supplier<Set<String>> served;
  private final Semaphore wake = new Semaphore(0);
  private final Thread thread;
  private final Announcements announcements;
  private final Retained retained;

  /** Stations that ever had a job: what a broker retains about them may be of an earlier run. */
  private final Set<String> known = new TreeSet<>();

  private volatile boolean stopping;
  private volatile long stoppingAt;
  private Reading reading;
  private Shop shop;
  private long next;
  private long kept;
  private long keptAt;
  private volatile String unreadable = "";
  private boolean unkept;
  private boolean wasConnected;

  /**
   * @param bridge the bridge's name
   * @param name the outlet's name, under which the cursor is kept
   * @param stations whether a station is told about here
   * @param served stations known by other means than by their jobs
   * @param opening opens the log for reading; called again after a failure
   * @param health the health message as of now
   * @param checkpointEvery at least so long between two checkpoints
   */
  public Publisher(
      String bridge,
      String name,
      Outlet outlet,
      Predicate<String> stations,
      Supplier<Set<String>> served,
      Supplier<Reading> opening,
      Supplier<HealthNow> health,
      Duration healthEvery,
      Duration checkpointEvery) {
    this.name = "publish:" + name;
    this.outlet = outlet;
    this.stations = stations;
    this.opening = opening;
    this.health = health;
    this.served = served;
    this.checkpoints = new CheckpointTopic(Retained.topic(bridge, "checkpoint"), checkpointEvery);
    this.announcements = new Announcements(bridge, stations, this::entry);
    this.retained = new Retained(bridge, outlet, healthEvery);
    this.thread = new Thread(this::run, "publish-" + name);
  }

  public void start() {
    thread.start();
  }

  /** There may be something new to tell. */
  public void wake() {
    wake.release();
  }

  /** Why nothing of the log can be told here. */
  public Optional<String> trouble() {
    return Optional.of(unreadable)
        .filter(reason -> !reason.isEmpty())
        .map(reason -> name + ": the log cannot be read to publish: " + reason);
  }

  private void run() {
    boolean last;
    do {
      last = stopping; // asked before the round, so that what was on record by then is told
      try {
        wake.tryAcquire(LOOK.toMillis(), TimeUnit.MILLISECONDS);
        wake.drainPermits();
        round();
      } catch (InterruptedException e) {
        break;
      } catch (LedgerException e) {
        unread(e);
        drop();
      } catch (RuntimeException e) {
        LOG.atError().addKeyValue("outlet", name).log("publishing failed", e);
        drop();
      }
      if (outlet.connected()) {
        retained.health(health.get());
      }
    } while (!last);
    if (outlet.connected()) {
      retained.stations().forEach(s -> retained.notRecording(s, "the bridge was stopped"));
    }
    retained.gone();
    lastCheckpoint();
    keep(Duration.ZERO);
    drop();
  }

  private void lastCheckpoint() {
    if (outlet.connected() && reading != null) {
      try {
        checkpoints.tellNow(reading, outlet);
      } catch (LedgerException e) {
        unread(e);
      }
    }
  }

  /** Once for each reason, not at every attempt. */
  private void unread(LedgerException e) {
    String reason = String.valueOf(e.getMessage());
    if (!reason.equals(unreadable)) {
      LOG.atWarn()
          .addKeyValue("outlet", name)
          .addKeyValue("reason", reason)
          .log("the log cannot be read to publish");
      unreadable = reason;
    }
  }

  /** Whether the time to tell what is on record before the end is up. */
  private boolean late() {
    return stopping && System.nanoTime() - stoppingAt > GRACE.toNanos();
  }

  private void round() {
    boolean connected = outlet.connected();
    if (!connected) {
      wasConnected = false;
      return;
    }
    if (!wasConnected) { // what is retained on a broker that lost its store is unknown
      wasConnected = true;
      retained.forget();
      checkpoints.forget();
    }
    Optional<String> standstill = health.get().standstill();
    standstill.ifPresent(this::notRecording);
    if (reading == null) {
      open();
    }
    while (!late() && tellNext()) {
      keep(KEEP);
    }
    if (standstill.isEmpty()) {
      expectations();
    }
    checkpoints.tell(reading, outlet);
    keep(KEEP);
    unreadable = "";
  }

  /** Told first, and of the log nothing is needed for it. */
  private void notRecording(String why) {
    retained.health(health.get());
    known.addAll(served.get());
    known.stream().filter(stations).forEach(station -> retained.notRecording(station, why));
  }

  private void open() {
    reading = opening.get();
    next = reading.cursor(name);
    kept = next;
    shop = Replay.of(reading.live());
    known.addAll(reading.stations());
  }

  /** Tells the next chunk; false when there is none or the outlet does not take it. */
  private boolean tellNext() {
    List<Stored> chunk = reading.from(next, CHUNK);
    if (chunk.isEmpty()) {
      return false;
    }
    List<Post> posts = new ArrayList<>();
    List<Long> numbers = new ArrayList<>();
    for (Stored stored : chunk) {
      Entry entry = EntryJson.read(stored.bytes());
      if (stored.n() >= shop.size()) {
        shop = shop.after(stored.n(), entry);
      }
      announcements.of(stored.n(), entry).ifPresent(posts::add);
      if (posts.size() > numbers.size()) {
        numbers.add(stored.n());
      }
    }
    int taken = posts.isEmpty() ? 0 : outlet.publish(posts);
    if (taken < posts.size()) {
      next = numbers.get(taken);
      return false;
    }
    next = chunk.get(chunk.size() - 1).n() + 1;
    return true;
  }

  private Entry entry(long n) {
    return EntryJson.read(reading.entry(n).orElseThrow().bytes());
  }

  private void expectations() {
    shop.jobs().values().forEach(j -> known.add(j.station()));
    known.addAll(retained.stations());
    known.stream().filter(stations).forEach(s -> retained.expect(s, shop.active(s)));
  }

  private void keep(Duration atMostEvery) {
    if (reading != null && next != kept && System.nanoTime() - keptAt >= atMostEvery.toNanos()) {
      keptAt = System.nanoTime();
      try {
        reading.cursor(name, next);
        kept = next;
        unkept = false;
      } catch (LedgerException e) {
        unkept(e); // a crash now: the last verdicts are told again, with the same ids
      }
    }
  }

  private void unkept(LedgerException e) {
    if (!unkept && health.get().standstill().isEmpty()) {
      LOG.atWarn()
          .addKeyValue("outlet", name)
          .addKeyValue("reason", e.getMessage())
          .log("how far was told cannot be kept");
    }
    unkept = true;
  }

  private void drop() {
    if (reading != null) {
      try {
        reading.close();
      } catch (LedgerException e) {
        LOG.atDebug().log("closing the failed log failed, too", e);
      }
      reading = null;
    }
  }

  /** Tells what is on record, for some seconds at most, keeps how far it has come, and stops. */
  @Override
  public void close() {
    stoppingAt = System.nanoTime();
    stopping = true;
    wake.release();
    try {
      thread.join(LONGEST.toMillis());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
