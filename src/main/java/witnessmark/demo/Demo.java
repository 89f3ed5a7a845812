package witnessmark.demo;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import witnessmark.config.ConfigFile;
import witnessmark.daemon.Bridge;
import witnessmark.entry.Entry;
import witnessmark.entry.Moments;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.sqlite.SqliteLedger;
import witnessmark.ledger.sqlite.SqliteReading;
import witnessmark.pipeline.Journal;

/**
 * The demo: sets the scene, starts everything for real, and follows the log until the job is
 * closed.
 */
public final class Demo {
  /** The unit that the demo assembles. */
  public static final String UNIT = Scene.UNIT;

  private static final String STATION = "bench-1";
  private static final Duration LONGEST = Duration.ofMinutes(15);

  private final Path directory;
  private final PrintWriter out;
  private final boolean fast;
  private final long seed;
  private final Function<List<String>, ProcessBuilder> simulator;

  /**
   * @param directory an empty or new directory; keeps the data
   * @param fast whether nobody waits between bolts
   * @param seed the same seed tells the same story
   * @param simulator the wrench simulator as a process with those arguments
   */
  public Demo(
      Path directory,
      PrintWriter out,
      boolean fast,
      long seed,
      Function<List<String>, ProcessBuilder> simulator) {
    this.directory = directory;
    this.out = out;
    this.fast = fast;
    this.seed = seed;
    this.simulator = simulator;
  }

  /**
   * Runs the demo to its end.
   *
   * @return the job's name
   * @throws IOException when the surroundings do not allow it
   */
  public String run() throws IOException, InterruptedException {
    LedgerFiles files = new LedgerFiles(directory.resolve("data"));
    boolean serial = Scene.hasSocat();
    try (EmbeddedBroker broker = EmbeddedBroker.start(directory)) {
      Path config = Scene.writeFiles(directory, broker.url(), serial);
      try (SqliteLedger ledger = SqliteLedger.create(files)) {
        Journal journal = new Journal(ledger);
        journal.note(new Entry.LogOpened(Moments.now(), ledger.origin()));
        String job = Scene.open(journal, STATION);
        Process wrenches =
            simulator
                .apply(wrenches(broker.url(), serial))
                .redirectErrorStream(true)
                .redirectOutput(directory.resolve("simulator.log").toFile())
                .start();
        Thread stop = new Thread(wrenches::destroy);
        Runtime.getRuntime().addShutdownHook(stop);
        plugged(serial, wrenches);
        try (Bridge bridge = new Bridge(ConfigFile.read(config, Map.of()), files)) {
          bridge.start();
          follow(files, journal, job, bridge, wrenches);
        } finally {
          wrenches.destroy();
          wrenches.waitFor(5, TimeUnit.SECONDS);
          Runtime.getRuntime().removeShutdownHook(stop);
        }
        return job;
      }
    }
  }

  /**
   * Waits for the simulator to lay the serial line, as one plugs a cable in before switching on.
   */
  private void plugged(boolean serial, Process wrenches) throws InterruptedException {
    for (int i = 0; serial && i < 500 && wrenches.isAlive(); i++) {
      if (Files.exists(directory.resolve(Scene.LINE))) {
        return;
      }
      TimeUnit.MILLISECONDS.sleep(20);
    }
  }

  private void follow(
      LedgerFiles files, Journal journal, String job, Bridge bridge, Process wrenches)
      throws IOException, InterruptedException {
    long end = System.nanoTime() + LONGEST.toNanos();
    try (SqliteReading reading = SqliteReading.open(files)) {
      Story story = new Story(out, reading, bridge.counts()::repeats);
      People people =
          new People(journal, reading, job, fast ? Duration.ZERO : Duration.ofSeconds(2));
      while (!people.closed()) {
        story.tell();
        people.act(story.shop());
        if (System.nanoTime() > end) {
          throw new IOException(
              "the demo's job did not end within " + LONGEST.toMinutes() + " minutes");
        }
        if (!wrenches.isAlive() && wrenches.exitValue() != 0) {
          throw new IOException(
              "the simulator ended with status "
                  + wrenches.exitValue()
                  + "; see "
                  + directory.resolve("simulator.log")
                  + ":\n"
                  + Files.readString(directory.resolve("simulator.log")).strip());
        }
        TimeUnit.MILLISECONDS.sleep(20);
      }
      story.tell();
    }
  }

  private List<String> wrenches(String broker, boolean serial) {
    List<String> line = new ArrayList<>(List.of("shop", "--broker", broker, "--station", STATION));
    line.addAll(
        List.of("--wrench", "serial=TW-0417,max=100,badge=" + Scene.TECHNICIAN + ",via=mqtt"));
    String via = serial ? "virtual:" + directory.resolve(Scene.LINE) : "mqtt";
    line.addAll(List.of("--wrench", "serial=TW-0502,max=25,min=5,via=" + via));
    Scene.MISTAKES.forEach(m -> line.addAll(List.of("--mistake", m)));
    // else it were chance whether a bolt or a confirmation came first, whatever the seed
    line.add("--gates-first");
    line.addAll(List.of("--seed", Long.toString(seed), "--pace", fast ? "fast" : "shop"));
    line.addAll(List.of("--truth", directory.resolve("truth.jsonl").toString()));
    return line;
  }
}
