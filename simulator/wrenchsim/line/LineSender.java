package wrenchsim.line;

import java.io.IOException;
import java.time.Duration;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import wrenchsim.wire.Answer;
import wrenchsim.wire.Frame;
import wrenchsim.wire.LinkException;
import wrenchsim.wrench.Reading;
import wrenchsim.wrench.Sender;

/**
 * A wrench on a serial line: sends frames, keeps each until it is answered, and opens the line
 * again when it breaks.
 */
public final class LineSender implements Sender, AutoCloseable {
  private static final long RETRY_MILLIS = 500;
  private static final long RESEND_CHECK_MILLIS = 100;

  private final Line line;
  private final String wrench;
  private final Consumer<String> warn;
  private final Outbox outbox = new Outbox();
  private final TreeMap<String, Integer> words = new TreeMap<>();
  // A write may wait for the other side, so it must not hold the lock an answer needs.
  private final Object writing = new Object();
  private volatile Line.Ends ends;
  private volatile boolean closed;
  private int again;
  private long lastProgressNanos = System.nanoTime();

  /** A sender for one wrench on a line that is not open yet. */
  public LineSender(Line line, String wrench, Consumer<String> warn) {
    this.line = Objects.requireNonNull(line, "line");
    this.wrench = Objects.requireNonNull(wrench, "wrench");
    this.warn = Objects.requireNonNull(warn, "warn");
  }

  /**
   * Opens the line for the first time.
   *
   * @throws LinkException when it cannot be opened: no retry, for it is most likely a wrong path
   */
  public void open() throws LinkException {
    ends = line.open();
    start(this::hearAnswers, "line-answers-" + wrench);
    start(this::sendAgain, "line-again-" + wrench);
  }

  private static void start(Runnable work, String name) {
    Thread thread = new Thread(work, name);
    thread.setDaemon(true);
    thread.start();
  }

  @Override
  public void send(Reading reading) {
    byte[] frame = Frame.encode(reading);
    synchronized (this) {
      outbox.sent(reading.event().orElseThrow(), frame, nowMillis());
    }
    write(frame);
  }

  /**
   * Waits until at most so many frames are unanswered.
   *
   * @return false when no answer came for {@code patience}
   */
  public synchronized boolean awaitAtMost(int open, Duration patience) {
    lastProgressNanos = System.nanoTime();
    while (outbox.size() > open) {
      long left = patience.toNanos() - (System.nanoTime() - lastProgressNanos);
      if (left <= 0) {
        return false;
      }
      try {
        TimeUnit.NANOSECONDS.timedWait(this, left);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        return false;
      }
    }
    return true;
  }

  /** How many frames are unanswered. */
  public synchronized int unanswered() {
    return outbox.size();
  }

  /** How many frames went out again for want of an answer. */
  public synchronized int sentAgain() {
    return again;
  }

  /** How often each word was the answer. */
  public synchronized TreeMap<String, Integer> words() {
    return new TreeMap<>(words);
  }

  private void hearAnswers() {
    AnswerReader reader = new AnswerReader();
    byte[] chunk = new byte[4096];
    while (!closed) {
      int count;
      try {
        count = ends.read(chunk);
      } catch (IOException e) {
        count = -1;
      }
      if (count >= 0) {
        reader.take(chunk, count, this::hear);
      } else if (!closed) {
        reopen();
      }
    }
  }

  private void hear(String text) {
    Optional<Answer> answer = Answer.read(text);
    if (answer.isEmpty()) {
      warn.accept("%s: the line brought '%s', which is no answer".formatted(wrench, text));
    } else if (answer.get() instanceof Answer.Taken taken) {
      take(taken);
    } else if (answer.get() instanceof Answer.Refused) {
      warn.accept(wrench + ": the bridge could not read a frame; it goes out again");
    } else {
      throw new IllegalStateException("unknown answer " + answer.get());
    }
  }

  private synchronized void take(Answer.Taken taken) {
    if (taken.wrench().equals(wrench) && outbox.answered(taken.number())) {
      words.merge(taken.word(), 1, Integer::sum);
      lastProgressNanos = System.nanoTime();
      notifyAll();
    }
  }

  private void reopen() {
    warn.accept(wrench + ": the line is gone; trying to open it again");
    closeQuietly(ends);
    while (!closed) {
      try {
        ends = line.open();
        return;
      } catch (LinkException e) {
        pause(RETRY_MILLIS);
      }
    }
  }

  private void sendAgain() {
    while (!closed) {
      pause(RESEND_CHECK_MILLIS);
      java.util.List<byte[]> due;
      synchronized (this) {
        due = outbox.due(nowMillis());
        again += due.size();
      }
      due.forEach(this::write);
    }
  }

  private void write(byte[] frame) {
    synchronized (writing) {
      try {
        ends.write(frame);
      } catch (IOException e) {
        // The reading thread sees the same loss and opens again; the outbox still has the frame.
        pause(RESEND_CHECK_MILLIS);
      }
    }
  }

  private void pause(long millis) {
    try {
      TimeUnit.MILLISECONDS.sleep(millis);
    } catch (InterruptedException e) {
      closed = true;
      Thread.currentThread().interrupt();
    }
  }

  private static long nowMillis() {
    return TimeUnit.NANOSECONDS.toMillis(System.nanoTime());
  }

  private static void closeQuietly(Line.Ends ends) {
    try {
      ends.close();
    } catch (IOException e) {
      // A broken line may fail to close; nothing on it is lost, the outbox has it.
    }
  }

  @Override
  public void close() {
    closed = true;
    if (ends != null) {
      closeQuietly(ends);
    }
  }
}
