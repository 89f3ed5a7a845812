package witnessmark.benchmark;

import java.nio.file.Path;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import witnessmark.bench.Mosquitto;
import witnessmark.ledger.LedgerFiles;

/** How long the daemon's process takes until it listens and until its health is told. */
final class StartUp {
  private static final int HISTORY = 100_000;
  private static final Path JAR = Path.of("target", "witnessmark.jar").toAbsolutePath();

  private final Path directory;
  private final Mosquitto broker;
  private int starts;

  private StartUp(Path directory, Mosquitto broker) {
    this.directory = directory;
    this.broker = broker;
  }

  private record Case(LedgerFiles files, Figures listening, Figures healthy) {
    Case(LedgerFiles files) {
      this(files, new Figures(), new Figures());
    }
  }

  static void run(Path directory, int rounds) {
    Print.title("Process start of witnessmark run until it listens, and until its health is told");
    Path own = Directories.fresh(directory, "start");
    try (Mosquitto broker = Mosquitto.quiet(own)) {
      StartUp startUp = new StartUp(own, broker);
      Case empty = new Case(Data.empty(own.resolve("empty")));
      Case full = new Case(Data.withHistory(own.resolve("full"), HISTORY, 40));
      startUp.start(empty);
      startUp.start(full);
      empty = new Case(empty.files());
      full = new Case(full.files());
      for (int i = 0; i < rounds; i++) {
        startUp.start(i % 2 == 0 ? empty : full);
        startUp.start(i % 2 == 0 ? full : empty);
      }
      Print.line("empty log: listening (aim: under 1 s)", empty.listening(), "s");
      Print.line("empty log: health told", empty.healthy(), "s");
      Print.line(HISTORY + " entries: listening", full.listening(), "s");
      Print.line(HISTORY + " entries: health told", full.healthy(), "s");
      Print.line(
          HISTORY + " entries / empty, listening (aim: 1)",
          Figures.ratio(full.listening(), empty.listening()),
          "");
    }
  }

  private void start(Case of) {
    String bridge = "shop-" + starts++;
    Path config = Data.config(directory, bridge, broker.url());
    CompletableFuture<Long> healthy = new CompletableFuture<>();
    try (Client watcher = new Client(broker.url(), "watcher")) {
      watcher.onMessage(m -> healthy.complete(System.nanoTime()));
      watcher.connect();
      watcher.subscribe("witnessmark/v1/" + bridge + "/health");
      long began = System.nanoTime();
      Process process = Built.run(JAR, config, of.files());
      try {
        of.listening().add((Built.listening(process) - began) / 1e9);
        of.healthy().add((healthy.get(30, TimeUnit.SECONDS) - began) / 1e9);
      } finally {
        process.destroy();
        process.waitFor(20, TimeUnit.SECONDS);
      }
    } catch (Exception e) {
      throw new IllegalStateException("the daemon did not start", e);
    }
  }
}
