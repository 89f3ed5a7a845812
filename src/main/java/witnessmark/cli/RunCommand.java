package witnessmark.cli;

import static java.nio.file.StandardOpenOption.APPEND;
import static java.nio.file.StandardOpenOption.CREATE;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import witnessmark.config.BridgeConfig;
import witnessmark.config.ConfigFile;
import witnessmark.daemon.Attendant;
import witnessmark.daemon.Bridge;
import witnessmark.ledger.FileFault;
import witnessmark.ledger.LedgerFiles;
import witnessmark.log.Form;
import witnessmark.log.Logs;
import witnessmark.log.Volume;
import witnessmark.systemd.ServiceManager;

/** The daemon. */
@Command(
    name = "run",
    mixinStandardHelpOptions = true,
    description = {
      "Run the daemon: listen to wrenches, record, tell verdicts. Ends on SIGTERM (exit status 143)",
      "or Ctrl-C (130), after what has arrived is on record."
    },
    footer = {"", "Example:  witnessmark run --config shop.toml --data /var/lib/witnessmark"})
final class RunCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Option(
      names = "--config",
      paramLabel = "FILE",
      required = true,
      description = "The configuration.")
  private Path config;

  @Option(
      names = "--data",
      paramLabel = "DIR",
      description =
          "The data directory (default: $WITNESSMARK_DATA, else the configuration's"
              + " data, else ./witnessmark-data).")
  private Path data;

  @Option(
      names = "--log",
      paramLabel = "FORM",
      description =
          "How to log to standard error: ${COMPLETION-CANDIDATES} (default: text, or journal where"
              + " systemd takes it).")
  private Form log;

  @Option(
      names = "--log-level",
      paramLabel = "LEVEL",
      description = "How much to log: error, warn, info (the default) or debug.")
  private Volume volume;

  @Option(
      names = "--log-file",
      paramLabel = "FILE",
      description =
          "Log to a file, too; it is turned over every day and at 10 MB, and the oldest "
              + "are removed after 30 days or beyond 200 MB.")
  private Path logFile;

  @Override
  public Integer call() throws InterruptedException {
    logs();
    BridgeConfig settings;
    try {
      settings = ConfigFile.read(config, System.getenv());
    } catch (IOException e) {
      throw Files.unreadable(config, e);
    }
    CountDownLatch stop = new CountDownLatch(1);
    CountDownLatch stopped = new CountDownLatch(1);
    try (Bridge bridge = bridge(settings)) {
      bridge.start();
      Runtime.getRuntime().addShutdownHook(new Thread(() -> end(stop, stopped)));
      attended(bridge, stop);
    } finally {
      stopped.countDown();
    }
    return Exit.YES;
  }

  /** Before anything is logged. */
  private void logs() {
    Logs.at(volume == null ? Volume.INFO : volume);
    Logs.write(log == null ? Form.fitting(System.getenv("JOURNAL_STREAM")) : log);
    if (logFile != null) {
      try {
        // tried here, because the logging library would only be silent
        java.nio.file.Files.newOutputStream(logFile, CREATE, APPEND).close();
      } catch (IOException e) {
        throw new Refusal(
            Exit.SURROUNDINGS,
            "The log file "
                + logFile
                + " cannot be written: "
                + FileFault.why(e)
                + ". Name one in a directory that this user may write to.");
      }
      Logs.keep(logFile);
    }
  }

  /** Waits for the end, and keeps the service manager informed where there is one. */
  private static void attended(Bridge bridge, CountDownLatch stop) throws InterruptedException {
    Optional<ServiceManager> manager =
        ServiceManager.of(System.getenv(), ProcessHandle.current().pid());
    if (manager.isEmpty()) {
      stop.await();
      return;
    }
    try (Attendant attendant = new Attendant(manager.get(), bridge::standing, bridge::turns)) {
      attendant.ready();
      stop.await();
    }
  }

  private Bridge bridge(BridgeConfig settings) {
    try {
      return new Bridge(
          settings, new LedgerFiles(DataDirectory.of(data, Optional.of(settings), config)));
    } catch (IllegalArgumentException e) {
      throw new Refusal(Exit.INPUT, config + ": " + e.getMessage());
    }
  }

  private static void end(CountDownLatch stop, CountDownLatch stopped) {
    stop.countDown();
    try {
      stopped.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
