package witnessmark.soak;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import org.eclipse.paho.client.mqttv3.MqttException;
import witnessmark.bench.DaemonProcess;
import witnessmark.bench.Mosquitto;
import witnessmark.bench.Program;
import witnessmark.bench.Workshop;

/**
 * Six benches at the pace of a thousand: each assembles one unit of 36 fasteners after the other,
 * while a probe asks how long a verdict takes and a look is taken at the daemon's process.
 *
 * <p>A bench makes about four readings a minute (common practice, no source), a thousand of them 67
 * a second: a job of 36 every {@link #JOB} at six stations.
 */
public final class Soak {
  static final int STATIONS = 6;
  static final Duration JOB = Duration.ofMillis(3200);

  private final Workshop shop;
  private final PrintStream out;
  private final List<Station> stations = new ArrayList<>();
  private final Trend trend = new Trend();

  Soak(Path directory, PrintStream out) {
    this.shop = Workshop.furnished(directory);
    this.out = out;
  }

  /** Arguments: minutes, and the directory for its files. */
  public static void main(String[] args) throws IOException, InterruptedException, MqttException {
    Duration length = Duration.ofSeconds(Math.round(Double.parseDouble(args[0]) * 60));
    Path directory = Files.createDirectories(Path.of(args[1]).toAbsolutePath());
    Path mine = Files.createTempDirectory(directory, "run");
    PrintStream out = System.out;
    System.setOut(new PrintStream(PrintStream.nullOutputStream())); // the simulator's story
    List<String> faults = new Soak(mine, out).run(length);
    faults.forEach(out::println);
    out.println(faults.isEmpty() ? "All of it holds." : "Not all of it holds.");
    System.exit(faults.isEmpty() ? 0 : 1);
  }

  /** Runs for that long; what did not hold, as sentences. */
  List<String> run(Duration length) throws IOException, InterruptedException, MqttException {
    shop.release("soak.toml", Parts.PROCEDURE);
    for (int i = 0; i < STATIONS; i++) {
      shop.enrol(Station.wrench(i), "100 N.m");
    }
    List<String> faults = new ArrayList<>();
    try (Mosquitto broker = Mosquitto.quiet(shop.directory());
        DaemonProcess daemon = shop.on(broker).daemon(broker);
        Probe probe = new Probe(broker.url())) {
      for (int i = 0; i < STATIONS; i++) {
        stations.add(new Station(i, broker.url(), shop.directory()));
      }
      stations.forEach(Station::start);
      watch(length, daemon, probe);
      for (Station s : stations) {
        s.finish();
        faults.addAll(s.faults());
      }
      probe.finish();
      long readings = stations.stream().mapToLong(Station::readings).sum();
      faults.addAll(Count.faults(shop, readings, probe.sent(), finished()));
      if (daemon.stop() != DaemonProcess.TERMINATED) {
        faults.add("The daemon did not end in order.");
      }
    }
    faults.addAll(trend.faults());
    Program.Ended verified = shop.attempt("ledger", "verify");
    out.println(verified.out().strip());
    if (verified.status() != 0) {
      faults.add("The log does not verify.");
    }
    return faults;
  }

  private boolean allWell() {
    return stations.stream().allMatch(s -> s.faults().isEmpty());
  }

  private int finished() {
    return stations.stream().mapToInt(Station::finished).sum();
  }

  private void watch(Duration length, DaemonProcess daemon, Probe probe)
      throws IOException, InterruptedException {
    out.println(
        "  minutes   jobs  verdict p50 ms    p99   heap MB    RSS MB   files threads   log MB   WAL MB");
    Path data = shop.directory().resolve("witnessmark-data");
    long began = System.nanoTime();
    long step = Math.max(TimeUnit.SECONDS.toNanos(2), length.toNanos() / 30);
    long end = began + length.toNanos();
    for (long next = began + step; next <= end && allWell(); next += step) {
      TimeUnit.NANOSECONDS.sleep(next - System.nanoTime());
      if (daemon.ended()) {
        throw new IllegalStateException("the daemon has ended:\n" + daemon.log());
      }
      Latencies latencies = probe.take();
      Vitals v = Vitals.of(daemon.pid(), data);
      trend.add(latencies, v);
      out.printf(
          Locale.ROOT,
          "  %7.1f %6d %15.2f %6.2f %9.1f %9.1f %7d %7d %8.1f %8.1f%n",
          (System.nanoTime() - began) / 60e9,
          finished(),
          latencies.at(0.5),
          latencies.at(0.99),
          v.heapMb(),
          v.residentMb(),
          v.files(),
          v.threads(),
          v.logMb(),
          v.walMb());
    }
  }
}
