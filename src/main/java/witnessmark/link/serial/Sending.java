package witnessmark.link.serial;

import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/**
 * The one writer of an open line: answers in the order they were given, and polls in between. A
 * thread of its own, because a write blocks for as long as the device takes nothing.
 */
final class Sending implements AutoCloseable {
  private static final Duration LIMIT = Duration.ofSeconds(2);
  private static final int WAITING_ANSWERS = 64;

  private final Line line;
  private final Optional<byte[]> poll;
  private final Duration pollEvery;
  private final BlockingQueue<Answer> answers = new ArrayBlockingQueue<>(WAITING_ANSWERS);
  private final Thread thread;
  private volatile boolean closed;

  Sending(Line line, SerialSettings settings) {
    this.line = line;
    this.poll = settings.poll();
    this.pollEvery = settings.pollEvery();
    this.thread = new Thread(this::run, "link-" + settings.name() + "-send");
    this.thread.setDaemon(true);
    this.thread.start();
  }

  /** Sends, and waits at most 2 seconds until the line has taken all bytes. */
  boolean send(byte[] bytes) {
    Answer answer = new Answer(bytes.clone(), new CompletableFuture<>());
    try {
      return !closed
          && answers.offer(answer)
          && answer.written.get(LIMIT.toMillis(), TimeUnit.MILLISECONDS);
    } catch (TimeoutException | ExecutionException e) {
      // Not sent later either: the device will have asked again by then.
      answer.written.complete(false);
      return false;
    } catch (InterruptedException e) {
      answer.written.complete(false);
      Thread.currentThread().interrupt();
      return false;
    }
  }

  /** Ends; a write that still blocks ends when the line is closed. */
  @Override
  public void close() {
    closed = true;
    thread.interrupt();
    for (Answer left = answers.poll(); left != null; left = answers.poll()) {
      left.written.complete(false);
    }
  }

  private void run() {
    long nextPoll = System.nanoTime();
    try {
      while (!closed) {
        if (poll.isEmpty()) {
          write(answers.take());
          continue;
        }
        Answer answer = answers.poll(nextPoll - System.nanoTime(), TimeUnit.NANOSECONDS);
        if (answer != null) {
          write(answer);
        } else {
          line.write(poll.get()); // a broken line is the reader's to notice
          nextPoll = System.nanoTime() + pollEvery.toNanos();
        }
      }
    } catch (InterruptedException ended) {
      Thread.currentThread().interrupt();
    }
  }

  private void write(Answer answer) {
    if (!answer.written.isDone()) {
      answer.written.complete(line.write(answer.bytes));
    }
  }

  private record Answer(byte[] bytes, CompletableFuture<Boolean> written) {}
}
