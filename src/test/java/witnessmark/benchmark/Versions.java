package witnessmark.benchmark;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import witnessmark.bench.Mosquitto;

/**
 * This build's daemon beside another build's, each as a process of its own, in turn.
 *
 * <p>A ratio of 1 is no change. For times more than 1 is slower, for readings a second faster.
 */
final class Versions {
  private final Path directory;
  private int started;

  private Versions(Path directory) {
    this.directory = directory;
  }

  /**
   * @param args the number of rounds, and the other build's jar
   */
  public static void main(String[] args) {
    int rounds = Integer.parseInt(args[0]);
    Path other = Path.of(args[1]).toAbsolutePath();
    Path mine = Path.of("target", "witnessmark.jar").toAbsolutePath();
    Path directory = Path.of("target", "versions");
    Directories.delete(directory);
    new Versions(directory).compare(mine, other, rounds);
    Directories.delete(directory);
  }

  private record Build(Path jar, Figures speed, Figures listening, List<Figures> millis) {
    Build(Path jar) {
      this(jar, new Figures(), new Figures(), new ArrayList<>());
    }

    Figures latency(double share) {
      Figures each = new Figures();
      millis.forEach(m -> each.add(m.at(share)));
      return each;
    }
  }

  private void compare(Path mine, Path other, int rounds) {
    Print.title("This build beside " + other + ", medians of " + rounds + " (least to most)");
    // the first round warms the machine's caches and does not count
    round(new Build(mine), new Build(other));
    Build now = new Build(mine);
    Build before = new Build(other);
    for (int i = 0; i < rounds; i++) {
      round(i % 2 == 0 ? now : before, i % 2 == 0 ? before : now);
    }
    show("readings a second from a backlog", now.speed(), before.speed(), "/s");
    show("verdict, p50", now.latency(0.5), before.latency(0.5), "ms");
    show("verdict, p99", now.latency(0.99), before.latency(0.99), "ms");
    double p99 = Figures.pooled(now.millis()).at(0.99) / Figures.pooled(before.millis()).at(0.99);
    Print.note(String.format("verdict, p99 over all rounds together: %.2f", p99));
    show("start until it listens", now.listening(), before.listening(), "s");
  }

  private static void show(String what, Figures now, Figures before, String unit) {
    Print.line(what, now, unit);
    Print.line("  the other", before, unit);
    Print.line("  this / the other", Figures.ratio(now, before), "");
  }

  private void round(Build first, Build second) {
    backlog(first);
    backlog(second);
    latency(first);
    latency(second);
  }

  /** From the first verdict to the last: the daemon's start is not in it, its warming up is. */
  private void backlog(Build build) {
    Path own = Directories.fresh(directory, "backlog-" + started++);
    try (Mosquitto broker = Mosquitto.quiet(own)) {
      Client.collect(broker.url(), Daemon.CLIENT);
      broker.publish(Client.READINGS, Throughput.readings());
      try (Built daemon = new Built(build.jar(), own, broker.url(), Throughput.FASTENERS)) {
        long began = System.nanoTime();
        daemon.start();
        build.listening().add((System.nanoTime() - began) / 1e9);
        Throughput.await(daemon, 1);
        long first = System.nanoTime();
        Throughput.await(daemon, Throughput.READINGS);
        double seconds = (System.nanoTime() - first) / (double) TimeUnit.SECONDS.toNanos(1);
        build.speed().add((Throughput.READINGS - 1) / seconds);
      }
    }
  }

  private void latency(Build build) {
    Path own = Directories.fresh(directory, "latency-" + started++);
    try (Mosquitto broker = Mosquitto.quiet(own);
        Built daemon = new Built(build.jar(), own, broker.url(), Latency.FASTENERS);
        Client hand = new Client(broker.url(), "hand")) {
      Client.collect(broker.url(), Daemon.CLIENT);
      daemon.start();
      build.millis().add(Latency.answered(daemon, hand));
    }
  }
}
