package witnessmark.doctor;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import java.util.function.Supplier;
import witnessmark.config.BridgeConfig;
import witnessmark.entry.Moments;
import witnessmark.job.Shop;
import witnessmark.ledger.LedgerFiles;

/** Looks everything over, one thing after the other. */
public final class Doctor {
  private final Consumer<Finding> findings;
  private Optional<Shop> shop = Optional.empty();

  /**
   * @param findings hears of each as soon as it is made
   */
  public Doctor(Consumer<Finding> findings) {
    this.findings = findings;
  }

  /** Looks at the program itself. */
  public void program() {
    look("java", Heap::look);
  }

  /** Looks at the configuration; what it says, where it has no fault. */
  public Optional<BridgeConfig> configuration(
      Optional<Path> file, Map<String, String> environment) {
    AtomicReference<Optional<BridgeConfig>> read = new AtomicReference<>(Optional.empty());
    look(
        Configuration.AREA,
        () -> {
          read.set(Configuration.look(file, environment, found -> found.forEach(findings)));
          return List.of();
        });
    return read.get();
  }

  /** Says that only a configuration without faults would tell where the log is. */
  public void noDirectory() {
    findings.accept(
        Finding.warn(
            Directory.AREA,
            "Where it is stands in the configuration, which cannot be read yet.",
            "Mend the configuration and look again, or name it with --data."));
    look(Clock.AREA, () -> Clock.look(Optional.empty()));
  }

  /**
   * Looks at a data directory and what is in it.
   *
   * @param whole whether every entry is to be verified, too
   */
  public void log(LedgerFiles files, boolean whole) {
    look(Directory.AREA, () -> Directory.look(files, Running.on(files.directory())));
    if (Files.isDirectory(files.directory())) {
      look(Disk.AREA, () -> Disk.look(files.directory()));
    }
    Log log = new Log(files);
    if (files.exist()) {
      look(Keys.AREA, () -> Keys.look(files));
      look(Log.AREA, log::look);
      if (whole) {
        look(Log.AREA, log::whole);
      }
      shop = log.shop();
      shop.ifPresent(s -> look("wrenches", () -> Workshop.look(s, Moments.now())));
    }
    look(Clock.AREA, () -> Clock.look(log.last()));
  }

  /** Looks at what a configuration connects. */
  public void links(BridgeConfig config, LedgerFiles files) {
    OptionalLong daemon = Running.on(files.directory());
    shop.ifPresent(s -> look("wrenches", () -> Workshop.bound(s, config)));
    config
        .checkpoints()
        .drop()
        .ifPresent(d -> look(Drops.AREA, () -> new Drops(d, files).look(config.checkpoints())));
    Brokers brokers = new Brokers(config);
    config.brokers().forEach(b -> look(Brokers.area(b), () -> brokers.look(b, Moments.now())));
    Ports ports = new Ports(daemon);
    config
        .ports()
        .forEach(p -> look(Ports.area(p.settings()), () -> List.of(ports.look(p.settings()))));
    Optional<Served> served = config.http().map(Served::new);
    served.ifPresent(s -> look(Served.AREA, () -> List.of(s.look(daemon.isPresent()))));
    look(
        AtWork.AREA,
        () ->
            new AtWork(config.name(), daemon, served.flatMap(Served::health), brokers.own())
                .look());
  }

  /** A fault of the program in one area must not hide the others. */
  void look(String area, Supplier<List<Finding>> look) {
    try {
      look.get().forEach(findings);
    } catch (RuntimeException e) {
      findings.accept(
          Finding.bad(
              area,
              "It could not be looked at: " + e + ".",
              "Look yourself; the other areas were looked at all the same. This is a fault of the"
                  + " program: report it with what witnessmark --version prints."));
    }
  }
}
