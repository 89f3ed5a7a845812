package witnessmark.benchmark;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.IntStream;
import witnessmark.bench.Mosquitto;

/**
 * How fast readings that queued at the broker come on disk, by the daemon and by the bare loop.
 *
 * <p>The time runs from the start of the subject, whose session has them all waiting, until the
 * last of them is on disk.
 */
final class Throughput {
  static final int READINGS = 20_000;
  static final int FASTENERS = 80;
  private static final long LIMIT = TimeUnit.MINUTES.toNanos(3);

  private Throughput() {}

  static void run(Path directory, int rounds) {
    Print.title("Durable readings a second: " + READINGS + " QoS 1 messages waiting at the broker");
    measure(directory, -1, true);
    measure(directory, -1, false);
    Figures daemon = new Figures();
    Figures bare = new Figures();
    for (int i = 0; i < rounds; i++) {
      boolean daemonFirst = i % 2 == 0;
      (daemonFirst ? daemon : bare).add(measure(directory, i, daemonFirst));
      (daemonFirst ? bare : daemon).add(measure(directory, i, !daemonFirst));
    }
    Print.line("daemon: match, judge, sign, record, tell", daemon, "/s");
    Print.line("bare loop: insert the bytes", bare, "/s");
    Print.line("daemon / bare loop (aim: at least 0.8)", Figures.ratio(daemon, bare), "");
  }

  private static double measure(Path directory, int round, boolean daemon) {
    Path own = Directories.fresh(directory, "throughput-" + (daemon ? "daemon-" : "bare-") + round);
    try (Mosquitto broker = Mosquitto.quiet(own)) {
      Client.collect(broker.url(), daemon ? Daemon.CLIENT : BareLoop.CLIENT);
      broker.publish(Client.READINGS, readings());
      try (Subject subject =
          daemon
              ? new Daemon(own, broker.url(), FASTENERS)
              : new BareLoop(own, broker.url(), false)) {
        long began = System.nanoTime();
        subject.start();
        await(subject, READINGS);
        return READINGS * 1e9 / (System.nanoTime() - began);
      }
    }
  }

  /** Waits until a subject has that many readings on disk. */
  static void await(Subject subject, long readings) {
    long began = System.nanoTime();
    while (subject.durable() < readings) {
      if (System.nanoTime() - began > LIMIT) {
        throw new IllegalStateException("only " + subject.durable() + " readings on disk");
      }
      LockSupport.parkNanos(1_000_000);
    }
  }

  /** Every fastener is tightened once in each pass, and then checked again and again. */
  static List<String> readings() {
    return IntStream.range(0, READINGS)
        .mapToObj(
            i ->
                Work.reading(
                    i,
                    Work.wrench(i),
                    i < 2 * FASTENERS ? Work.torque(i) : "49.7",
                    i < 2 * FASTENERS ? "" : Work.fastener(i % FASTENERS)))
        .map(bytes -> new String(bytes, UTF_8))
        .toList();
  }
}
