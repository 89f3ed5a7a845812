package witnessmark.pipeline;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/**
 * The messages that wait for the disk, in the order in which they came. Those that their senders
 * keep and those that nobody else has each have a room of their own, so that neither takes the
 * other's. For any thread.
 *
 * <p>While nothing can be recorded, nobody waits for room: what its sender does not keep and what
 * no longer fits is counted.
 */
final class Waiting {
  /** A message of a sender that does not keep it takes one place for each of so many bytes. */
  private static final int PLACE = 4096;

  private static final int STATIONS = 1000;
  private static final Duration GLANCE = Duration.ofMillis(50);

  private final int room;
  private final Semaphore keptBySender;
  private final Semaphore keptHereOnly;
  private final BlockingQueue<Message> queue = new LinkedBlockingQueue<>();

  /** Taken out of the queue and not on record yet. */
  private final ConcurrentLinkedQueue<Message> inHand = new ConcurrentLinkedQueue<>();

  private final Missed missed = new Missed();
  private final Set<String> stations = ConcurrentHashMap.newKeySet();
  private final Counts counts;
  private volatile boolean standstill;
  private volatile boolean closed;

  Waiting(int room, Counts counts) {
    this.room = room;
    this.keptBySender = new Semaphore(room);
    this.keptHereOnly = new Semaphore(room);
    this.counts = counts;
  }

  /**
   * Takes a message, waiting at most that long for room.
   *
   * @return false when there was none and its sender keeps it: it must not be acknowledged. What
   *     nobody else has is kept or counted.
   */
  boolean offer(Message message, Duration patience) throws InterruptedException {
    message.station().filter(s -> stations.size() < STATIONS).ifPresent(stations::add);
    if (message.sender().keeps()) {
      return !closed
          && keptBySender.tryAcquire(patience.toMillis(), TimeUnit.MILLISECONDS)
          && enter(message);
    }
    if (acquired(places(message), patience)) {
      return enter(message);
    }
    missed.count(message);
    counts.missed();
    message.sender().lost();
    return true;
  }

  private boolean acquired(int places, Duration patience) throws InterruptedException {
    long began = System.nanoTime();
    do {
      if (closed || standstill) {
        return !closed && keptHereOnly.tryAcquire(places);
      }
      if (keptHereOnly.tryAcquire(places, GLANCE.toMillis(), TimeUnit.MILLISECONDS)) {
        return true;
      }
    } while (System.nanoTime() - began < patience.toNanos());
    return false;
  }

  private int places(Message message) {
    return (int) Math.min(room, 1 + Math.max(0, message.length() - 1) / PLACE);
  }

  private boolean enter(Message message) {
    counts.waiting(1);
    queue.add(message);
    if (standstill) {
      message.sender().waits();
    }
    return true;
  }

  /** The next messages, none when none comes within that time. */
  List<Message> next(int most, Duration patience) throws InterruptedException {
    List<Message> group = new ArrayList<>();
    Message first = queue.poll(patience.toMillis(), TimeUnit.MILLISECONDS);
    if (first != null) {
      inHand.add(first);
      group.add(first);
      queue.drainTo(group, most - 1);
      inHand.addAll(group.subList(1, group.size()));
    }
    return group;
  }

  /** They are on record: their room is free again. */
  void done(List<Message> group) {
    inHand.clear();
    counts.waiting(-group.size());
    for (Message message : group) {
      if (message.sender().keeps()) {
        keptBySender.release();
      } else {
        keptHereOnly.release(places(message));
      }
    }
  }

  /** Whether anything can be recorded has changed; all that wait are told when nothing can. */
  void standstill(boolean now) {
    standstill = now;
    if (now) {
      all().forEach(m -> m.sender().waits());
    }
  }

  /** Takes no more. */
  void close() {
    closed = true;
  }

  boolean isEmpty() {
    return queue.isEmpty();
  }

  /** Whether at least half of the room for what senders keep is free. */
  boolean hasRoom() {
    return keptBySender.availablePermits() * 2 >= room;
  }

  /** How much of the room of those that their senders keep, or of the others', is taken: 0 to 1. */
  double fill(boolean ofSenders) {
    Semaphore places = ofSenders ? keptBySender : keptHereOnly;
    return 1 - (double) places.availablePermits() / room;
  }

  Missed missed() {
    return missed;
  }

  /** Stations that anything came from, up to a bound. */
  Set<String> stations() {
    return Set.copyOf(stations);
  }

  /** How many messages by source nobody has, when it ends now. */
  Map<String, Long> lost() {
    Map<String, Long> bySource = new TreeMap<>();
    missed.all().forEach(e -> bySource.merge(e.source(), e.messages(), Long::sum));
    all().filter(m -> !m.sender().keeps()).forEach(m -> bySource.merge(m.source(), 1L, Long::sum));
    return bySource;
  }

  private Stream<Message> all() {
    return Stream.concat(inHand.stream(), queue.stream());
  }
}
