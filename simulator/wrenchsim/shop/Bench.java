package wrenchsim.shop;

import java.time.Duration;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import java.util.function.Supplier;
import wrenchsim.wire.ExpectMessage;
import wrenchsim.wire.VerdictMessage;
import wrenchsim.wrench.Reading;

/** What a person sees and hears at the station: the newest expectation and the verdicts so far. */
public final class Bench {
  private record Key(String wrench, Optional<Long> event) {}

  private final Map<Key, Deque<VerdictMessage>> verdicts = new HashMap<>();
  private final List<VerdictMessage> assigned = new ArrayList<>();
  private Optional<ExpectMessage> expect = Optional.empty();
  private long changes;
  private long changesBefore;
  private Optional<ExpectMessage> expectBefore = Optional.empty();
  private long lastHeardNanos = System.nanoTime();

  /** Takes what the station expects from now on. */
  public synchronized void hear(ExpectMessage message) {
    if (!expect.map(Task::work).equals(Optional.of(Task.work(message)))) {
      changes++;
    }
    expect = Optional.of(message);
    heard();
  }

  /** Takes a verdict. */
  public synchronized void hear(VerdictMessage message) {
    if (message.assigns().isPresent()) {
      assigned.add(message);
    } else {
      Key key = new Key(message.wrench(), message.event());
      verdicts.computeIfAbsent(key, k -> new ArrayDeque<>()).add(message);
    }
    heard();
  }

  private void heard() {
    lastHeardNanos = System.nanoTime();
    notifyAll();
  }

  /** The newest expectation, if any came yet. */
  synchronized Optional<ExpectMessage> expect() {
    return expect;
  }

  /** The verdicts on what a person placed since this was last asked. */
  synchronized List<VerdictMessage> assigned() {
    List<VerdictMessage> now = List.copyOf(assigned);
    assigned.clear();
    return now;
  }

  /**
   * Makes ready for readings about to be sent: what comes from now on may be their doing, and no
   * older verdict is confused with their own.
   */
  synchronized void aboutToSend(List<Reading> readings) {
    readings.forEach(r -> verdicts.remove(new Key(r.wrench(), r.event())));
    changesBefore = changes;
    expectBefore = expect;
  }

  /** Whether other work was expected at least once since the last readings were sent. */
  synchronized boolean hasOtherWork() {
    return changes > changesBefore;
  }

  /** Whether a fastener was due when the last readings were sent. */
  synchronized boolean wasDue(String fastener) {
    return expectBefore.stream()
        .flatMap(e -> e.expect().stream())
        .anyMatch(due -> due.fastener().equals(fastener));
  }

  /**
   * Waits until other work was expected at least once since the last readings were sent, even if it
   * is the same again by now; or for so long without any message.
   */
  synchronized void awaitOtherWork(Duration silence) {
    await(() -> hasOtherWork() ? expect : Optional.empty(), silence);
  }

  /** Waits for an expectation that will do; empty after so long without any message. */
  synchronized Optional<ExpectMessage> awaitExpect(
      Predicate<ExpectMessage> will, Duration silence) {
    return await(() -> expect.filter(will), silence);
  }

  /** Waits for the verdict on a reading; empty after so long without any message. */
  synchronized Optional<VerdictMessage> awaitVerdict(Reading reading, Duration silence) {
    Key key = new Key(reading.wrench(), reading.event());
    return await(() -> Optional.ofNullable(verdicts.get(key)).map(Deque::poll), silence);
  }

  private <T> Optional<T> await(Supplier<Optional<T>> look, Duration silence) {
    long beganNanos = System.nanoTime();
    Optional<T> found = look.get();
    while (found.isEmpty()) {
      long quietNanos = System.nanoTime() - Math.max(beganNanos, lastHeardNanos);
      long left = silence.toNanos() - quietNanos;
      if (left <= 0) {
        return found;
      }
      try {
        TimeUnit.NANOSECONDS.timedWait(this, left);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        return found;
      }
      found = look.get();
    }
    return found;
  }
}
