package witnessmark.pipeline;

import java.time.Duration;
import java.util.List;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;
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
  private static final Duration IDLE = Duration.ofMillis(200);
  private static final long AGAIN = TimeUnit.SECONDS.toNanos(1);

  private final Counts counts = new Counts();
  private final Refusals refusals = new Refusals();
  private final Waiting waiting;
  private final Recorder recorder;
  private final BooleanSupplier doubt;
  private final Runnable news;
  private final Watch watch;
  private final AtomicLong turns = new AtomicLong();
  private final Thread writer = new Thread(this::run, "writer");
  private volatile boolean stopping;
  private long lookedAt;

  /**
   * @param room how many messages may wait that their senders keep, and how many that they do not
   * @param opening opens the log; called again after a failure
   * @param doubt whether something speaks against recording, asked about once a second while
   *     nothing comes; then it is tried
   * @param news told after each group is on disk, and when that begins or ceases to be possible
   */
  public Loop(int room, Supplier<Ledger> opening, BooleanSupplier doubt, Runnable news) {
    this(room, opening, doubt, news, Watch.NONE);
  }

  /** The same with one who counts. */
  public Loop(
      int room, Supplier<Ledger> opening, BooleanSupplier doubt, Runnable news, Watch watch) {
    this.watch = watch;
    this.waiting = new Waiting(room, counts);
    this.recorder = new Recorder(opening, waiting.missed());
    this.doubt = doubt;
    this.news = news;
  }

  /**
   * Opens the log and begins to write.
   *
   * @throws LedgerException when the log cannot be opened
   */
  public void start() {
    writer.setUncaughtExceptionHandler((t, e) -> ended(e));
    recorder.open();
    counts.holding(recorder.size()); // whether it can be written is not known yet
    writer.start();
  }

  /**
   * Takes a message, waiting at most that long for room, and not at all while nothing can be
   * recorded.
   *
   * @return false when there was none and its sender keeps it; what its sender does not keep is
   *     counted instead, and the log states it
   */
  public boolean offer(Message message, Duration patience) {
    try {
      return waiting.offer(message, patience);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    }
  }

  /** Whether at least half of the room for what senders keep is free. */
  public boolean hasRoom() {
    return waiting.hasRoom();
  }

  /** Stations that sent anything, up to a bound. */
  public Set<String> stations() {
    return waiting.stations();
  }

  /**
   * How much of its room is taken, 0 to 1.
   *
   * @param keptBySender of the room of messages that their senders keep; else of those that nobody
   *     else has
   */
  public double fill(boolean keptBySender) {
    return waiting.fill(keptBySender);
  }

  /**
   * How often the writer has come round: at least every few seconds while it works, waits for
   * messages, or tries a log that fails.
   */
  public long turns() {
    return turns.get();
  }

  public Counts counts() {
    return counts;
  }

  private void run() {
    while (!stopping || !waiting.isEmpty() || waiting.missed().any()) {
      try {
        turns.incrementAndGet();
        List<Message> group = waiting.next(GROUP, IDLE);
        if (!group.isEmpty() || waiting.missed().any()) {
          if (!record(group)) {
            return;
          }
        } else if (System.nanoTime() - lookedAt >= AGAIN) {
          lookedAt = System.nanoTime();
          look();
        }
        refusals.overdue(System.nanoTime()).forEach(Loop::tell);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        return;
      }
    }
  }

  /** Whether it could be recorded before the end. */
  private boolean record(List<Message> group) throws InterruptedException {
    List<List<Arrival>> arrivals = group.stream().map(Message::arrivals).toList();
    while (true) {
      turns.incrementAndGet();
      try {
        long from = System.nanoTime();
        List<List<Outcome>> outcomes = recorder.record(arrivals, because());
        recorded(group, outcomes, System.nanoTime() - from);
        return true;
      } catch (RuntimeException e) {
        failed(e);
      }
      if (stopping) {
        return false;
      }
      TimeUnit.NANOSECONDS.sleep(AGAIN);
    }
  }

  private String because() {
    return counts.trouble() != null
        ? "nothing could be recorded: " + counts.trouble()
        : stopping ? "the bridge was stopping" : "the disk was slower than what came";
  }

  private void recorded(List<Message> group, List<List<Outcome>> outcomes, long took) {
    well(recorder.size());
    waiting.done(group);
    news.run();
    watched(outcomes, took);
    for (int i = 0; i < group.size(); i++) {
      outcomes.get(i).forEach(counts::took);
      outcomes.get(i).forEach(this::refused);
      acknowledge(group.get(i), outcomes.get(i));
    }
  }

  /** While nothing comes, nothing fails either: what speaks against recording is looked at. */
  private void look() {
    try {
      well(recorder.look(counts.trouble() != null || doubt.getAsBoolean()));
    } catch (RuntimeException e) {
      failed(e);
    }
  }

  private void well(long entries) {
    boolean was = counts.trouble() != null;
    counts.recording(entries);
    if (was) {
      waiting.standstill(false);
      LOG.atInfo()
          .addKeyValue("waiting", counts.waiting())
          .addKeyValue("notkept", counts.notKept())
          .log("recording again");
      news.run();
    }
  }

  private void failed(RuntimeException e) {
    boolean was = counts.trouble() != null;
    String why = String.valueOf(e.getMessage());
    if (counts.failing(why)) {
      LOG.atError()
          .addKeyValue("waiting", counts.waiting())
          .addKeyValue("reason", why)
          .setCause(e instanceof LedgerException ? null : e)
          .log("nothing can be recorded");
    }
    if (!was) {
      news.run(); // before those who wait are told, which may take seconds
      waiting.standstill(true);
    }
  }

  /** Nothing tries again: said everywhere, as long as this process lives. */
  private void ended(Throwable e) {
    failed(
        new IllegalStateException(
            "The program's writer has ended by "
                + e
                + ". Start the bridge again; it goes on where the log ends.",
            e));
  }

  /** A fault of who only counts must not end the writer. */
  private void watched(List<List<Outcome>> outcomes, long took) {
    try {
      watch.recorded(outcomes.stream().flatMap(List::stream).toList(), recorder.statements(), took);
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
      message.sender().recorded(outcomes);
    } catch (RuntimeException e) {
      LOG.atWarn().addKeyValue("source", message.source()).log("not acknowledged", e);
    }
  }

  /** Records what is queued and stops; what cannot be recorded and nobody else has is told. */
  @Override
  public void close() {
    waiting.close();
    stopping = true;
    try {
      writer.join(TimeUnit.SECONDS.toMillis(10));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    waiting
        .lost()
        .forEach(
            (source, messages) ->
                LOG.atError()
                    .addKeyValue("source", source)
                    .addKeyValue("messages", messages)
                    .log("lost: stopped before it could be recorded"));
    recorder.close();
  }
}
