package witnessmark.benchmark;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLongArray;
import java.util.concurrent.locks.LockSupport;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.eclipse.paho.client.mqttv3.MqttException;
import witnessmark.bench.Mosquitto;

/** How long after a reading was published its verdict comes, readings coming one at a time. */
final class Latency {
  private static final int READINGS = 200;
  private static final int WARM = 40;
  static final int FASTENERS = 120;
  private static final long PACE = TimeUnit.MILLISECONDS.toNanos(20);
  private static final Pattern NUMBER = Pattern.compile("\"event\":(\\d+)");

  private Latency() {}

  static void run(Path directory, int rounds) {
    Print.title(
        "Publish of a reading to arrival of its verdict: " + READINGS + ", one every 20 ms");
    answered(directory, -1, true);
    answered(directory, -1, false);
    List<Figures> daemon = new ArrayList<>();
    List<Figures> bare = new ArrayList<>();
    List<Figures> commit = new ArrayList<>();
    for (int i = 0; i < rounds; i++) {
      boolean daemonFirst = i % 2 == 0;
      (daemonFirst ? daemon : bare).add(answered(directory, i, daemonFirst));
      commit.add(committed(directory, i));
      (daemonFirst ? bare : daemon).add(answered(directory, i, !daemonFirst));
    }
    for (double share : new double[] {0.5, 0.99}) {
      String p = share == 0.5 ? "p50" : "p99";
      Figures d = each(daemon, share);
      Figures b = each(bare, share);
      Figures c = each(commit, share);
      Print.line("daemon: verdict, " + p, d, "ms");
      Print.line("bare loop: answer after the commit, " + p, b, "ms");
      Print.line("bare commit alone, " + p, c, "ms");
      Print.line("daemon / bare loop, " + p + " (aim: within 2)", Figures.ratio(d, b), "");
      Print.line("daemon / bare commit, " + p, Figures.ratio(d, c), "");
    }
    double pooled = Figures.pooled(daemon).at(0.99) / Figures.pooled(bare).at(0.99);
    Print.note(String.format("p99 over all rounds together, daemon / bare loop: %.2f", pooled));
  }

  private static Figures each(List<Figures> rounds, double share) {
    Figures all = new Figures();
    rounds.forEach(r -> all.add(r.at(share)));
    return all;
  }

  private static Figures answered(Path directory, int round, boolean daemon) {
    Path own = Directories.fresh(directory, "latency-" + (daemon ? "daemon-" : "bare-") + round);
    try (Mosquitto broker = Mosquitto.quiet(own);
        Subject subject =
            daemon
                ? new Daemon(own, broker.url(), FASTENERS)
                : new BareLoop(own, broker.url(), true);
        Client hand = new Client(broker.url(), "hand")) {
      Client.collect(broker.url(), daemon ? Daemon.CLIENT : BareLoop.CLIENT);
      subject.start();
      return answered(subject, hand);
    }
  }

  /** Milliseconds until each answer of a subject that has started. */
  static Figures answered(Subject subject, Client hand) {
    AtomicLongArray arrived = new AtomicLongArray(WARM + READINGS);
    hand.onMessage(m -> arrived.set(number(m.getPayload()), System.nanoTime()));
    hand.connect();
    hand.subscribe(subject.answers());
    Figures millis = new Figures();
    for (int i = 0; i < WARM + READINGS; i++) {
      long sent = System.nanoTime();
      send(hand, i);
      long since = await(arrived, i) - sent;
      if (i >= WARM) {
        millis.add(since / 1e6);
      }
      while (System.nanoTime() - sent < PACE) {
        LockSupport.parkNanos(PACE - (System.nanoTime() - sent));
      }
    }
    return millis;
  }

  private static void send(Client hand, int i) {
    try {
      hand.publish(Client.READINGS, Work.reading(i, Work.wrench(i), Work.torque(i), ""));
    } catch (MqttException e) {
      throw new IllegalStateException(e);
    }
  }

  private static long await(AtomicLongArray arrived, int i) {
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(30);
    while (arrived.get(i) == 0) {
      if (System.nanoTime() > deadline) {
        throw new IllegalStateException("no answer to reading " + i);
      }
      LockSupport.parkNanos(200_000);
    }
    return arrived.get(i);
  }

  private static Figures committed(Path directory, int round) {
    Path own = Directories.fresh(directory, "latency-commit-" + round);
    Figures millis = new Figures();
    try (Table table = new Table(own.resolve("bare.db"))) {
      for (int i = 0; i < WARM + READINGS; i++) {
        List<byte[]> one = List.of(Work.reading(i, Work.wrench(i), Work.torque(i), ""));
        long began = System.nanoTime();
        table.commit(one);
        if (i >= WARM) {
          millis.add((System.nanoTime() - began) / 1e6);
        }
        while (System.nanoTime() - began < PACE) {
          LockSupport.parkNanos(PACE - (System.nanoTime() - began));
        }
      }
    }
    return millis;
  }

  private static int number(byte[] payload) {
    Matcher matcher = NUMBER.matcher(new String(payload, UTF_8));
    if (!matcher.find()) {
      throw new IllegalStateException("an answer without a number");
    }
    return Integer.parseInt(matcher.group(1));
  }
}
