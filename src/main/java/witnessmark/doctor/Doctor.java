package witnessmark.doctor;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Consumer;
import witnessmark.config.BridgeConfig;
import witnessmark.entry.Moments;
import witnessmark.ledger.LedgerFiles;

/** Looks everything over, one thing after the other. */
public final class Doctor {
  private final Consumer<Finding> findings;

  /**
   * @param findings hears of each as soon as it is made
   */
  public Doctor(Consumer<Finding> findings) {
    this.findings = findings;
  }

  /** Looks at the program itself. */
  public void program() {
    tell(Heap.look());
  }

  /** Looks at the configuration; what it says, where it has no fault. */
  public Optional<BridgeConfig> configuration(
      Optional<Path> file, Map<String, String> environment) {
    return Configuration.look(file, environment, this::tell);
  }

  /** Says that only a configuration without faults would tell where the log is. */
  public void noDirectory() {
    tell(
        List.of(
            Finding.warn(
                "data directory",
                "Where it is stands in the configuration, which cannot be read yet.",
                "Mend the configuration and look again, or name it with --data.")));
    tell(Clock.look(Optional.empty()));
  }

  /**
   * Looks at a data directory and what is in it.
   *
   * @param whole whether every entry is to be verified, too
   */
  public void log(LedgerFiles files, boolean whole) {
    tell(Directory.look(files, Running.on(files.directory())));
    if (Files.isDirectory(files.directory())) {
      tell(Disk.look(files.directory()));
    }
    Optional<Instant> last = Optional.empty();
    if (files.exist()) {
      tell(Keys.look(files));
      Log log = new Log(files);
      tell(log.look());
      if (whole) {
        tell(log.whole());
      }
      last = log.last();
      log.shop().ifPresent(s -> tell(Workshop.look(s, Moments.now())));
    }
    tell(Clock.look(last));
  }

  /** Looks at what a configuration connects. */
  public void links(BridgeConfig config, LedgerFiles files) {
    OptionalLong daemon = Running.on(files.directory());
    tell(new Brokers(config, daemon.isPresent()).look(Moments.now()));
    tell(new Ports(daemon).look(config.ports()));
    config.http().ifPresent(h -> tell(List.of(Served.look(h, daemon.isPresent()))));
  }

  private void tell(List<Finding> found) {
    found.forEach(findings);
  }
}
