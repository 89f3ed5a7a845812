package witnessmark.pipeline;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import witnessmark.entry.Entry;
import witnessmark.ledger.Ledger;
import witnessmark.ledger.LedgerException;

/**
 * The one writer: takes messages from a bounded queue and puts them on record in groups. What
 * queued while the last commit ran goes into the next one; nothing is waited for.
 *
 * <p>When the log fails, the messages in hand are kept, the log is opened anew until it works, and
 * they are recorded then; repeats are told by their numbers.
 */
public final class Loop implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Loop.class);
  private static final int GROUP = 256;
  private static final Duration AGAIN = Duration.ofSeconds(1);

  private final BlockingQueue<Message> queue;
  private final Supplier<Ledger> opening;
  private final Runnable recorded;
  private final Watch watch;
  private final int capacity;
  private final Counts counts = new Counts();
  private final Refusals refusals = new Refusals();
  private final Thread writer = new Thread(this::run, "writer");
  private final AtomicLong turns = new AtomicLong();
  private volatile boolean stopping;
  private Ledger ledger;
  private Journal journal;
  private long took;

  /**
   * @param capacity how many messages may wait
   * @param opening opens the log; called again after a failure
   * @param recorded told after each group is on disk
   */
  public Loop(int capacity, Supplier<Ledger> opening, Runnable recorded) {
    this(capacity, opening, recorded, Watch.NONE);
  }

  /** The same with one who counts. */
  public Loop(int capacity, Supplier<Ledger> opening, Runnable recorded, Watch watch) {
    this.queue = new ArrayBlockingQueue<>(capacity);
    this.capacity = capacity;
    this.opening = opening;
    this.recorded = recorded;
    this.watch = watch;
  }

  /**
   * Opens the log and begins to write.
   *
   * @throws LedgerException when the log cannot be opened
   */
  public void start() {
    open();
    writer.start();
  }

  /** Takes a message, waiting at most that long for room; false when there was none. */
  public boolean offer(Message message, Duration patience) {
    try {
      return !stopping && queue.offer(message, patience.toMillis(), TimeUnit.MILLISECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    }
  }

  /** Takes a message, waiting for room. */
  public void put(Message message) throws InterruptedException {
    queue.put(message);
  }

  /** Whether at least half of the queue is free. */
  public boolean hasRoom() {
    return queue.remainingCapacity() >= queue.size();
  }

  /** How many messages wait. */
  public int waiting() {
    return queue.size();
  }

  /** How many messages may wait. */
  public int capacity() {
    return capacity;
  }

  public Counts counts() {
    return counts;
  }

  /**
   * How often the writer has come round: at least every few seconds while it works, waits for
   * messages, or tries a log that fails.
   */
  public long turns() {
    return turns.get();
  }

  private void open() {
    ledger = opening.get();
    journal = new Journal(ledger);
    counts.holding(journal.shop().size());
  }

  private void run() {
    while (!stopping || !queue.isEmpty()) {
      try {
        turns.incrementAndGet();
        List<Message> group = group();
        if (!group.isEmpty()) {
          record(group);
        }
        refusals.overdue(System.nanoTime()).forEach(Loop::tell);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        return;
      }
    }
  }

  private List<Message> group() throws InterruptedException {
    List<Message> group = new ArrayList<>();
    Message first = queue.poll(200, TimeUnit.MILLISECONDS);
    if (first != null) {
      group.add(first);
      queue.drainTo(group, GROUP - 1);
    }
    return group;
  }

  private void record(List<Message> group) throws InterruptedException {
    List<List<Arrival>> arrivals = group.stream().map(Message::arrivals).toList();
    List<List<Outcome>> outcomes = null;
    while (outcomes == null) {
      turns.incrementAndGet();
      outcomes = attempt(arrivals);
      if (outcomes == null && stopping) {
        return; // unacknowledged: their senders keep them
      }
    }
    recorded.run();
    watched(outcomes);
    for (int i = 0; i < group.size(); i++) {
      outcomes.get(i).forEach(counts::took);
      outcomes.get(i).forEach(this::refused);
      acknowledge(group.get(i), outcomes.get(i));
    }
    counts.recording(journal.shop().size());
  }

  /** A fault of who only counts must not end the writer. */
  private void watched(List<List<Outcome>> outcomes) {
    try {
      watch.recorded(outcomes.stream().flatMap(List::stream).toList(), took);
    } catch (RuntimeException e) {
      LOG.atWarn().log("not counted", e);
    }
  }

  private void refused(Outcome outcome) {
    for (Entry entry : outcome.entries()) {
      if (entry instanceof Entry.Refused r) {
        refusals.refused(r.source(), r.reason(), System.nanoTime()).ifPresent(Loop::tell);
      }
    }
  }

  private static void tell(Refusals.Line line) {
    LOG.atWarn()
        .addKeyValue("source", line.source())
        .addKeyValue("reason", line.reason())
        .addKeyValue("leftout", line.leftOut())
        .log("refused, and on record");
  }

  /** What fails here is on record all the same; the sender sends it again and is told so. */
  private static void acknowledge(Message message, List<Outcome> outcomes) {
    try {
      message.recorded().accept(outcomes);
    } catch (RuntimeException e) {
      LOG.atWarn().addKeyValue("source", message.source()).log("not acknowledged", e);
    }
  }

  private List<List<Outcome>> attempt(List<List<Arrival>> arrivals) throws InterruptedException {
    try {
      if (journal == null) {
        open();
      }
      long from = System.nanoTime();
      List<List<Outcome>> outcomes = journal.take(arrivals);
      took = System.nanoTime() - from;
      return outcomes;
    } catch (RuntimeException e) { // of the log, or a state that contradicts it
      if (counts.failing(String.valueOf(e.getMessage()))) {
        LOG.atError().addKeyValue("waiting", arrivals.size()).log("nothing can be recorded", e);
      }
      abandon();
      TimeUnit.MILLISECONDS.sleep(AGAIN.toMillis());
      return null;
    }
  }

  /** After a failure nobody knows what was written: only opening anew tells. */
  private void abandon() {
    journal = null;
    if (ledger != null) {
      try {
        ledger.close();
      } catch (LedgerException e) {
        LOG.atDebug().log("closing the failed log failed, too", e);
      }
      ledger = null;
    }
  }

  /** Records what is queued and stops. */
  @Override
  public void close() {
    stopping = true;
    try {
      writer.join(TimeUnit.SECONDS.toMillis(10));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    if (ledger != null) {
      ledger.close();
    }
  }
}
