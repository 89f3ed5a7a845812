package witnessmark.doctor;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import witnessmark.config.BridgeConfig;
import witnessmark.config.ConfigFile;
import witnessmark.config.MqttConfig;
import witnessmark.ledger.FileFault;
import witnessmark.ledger.Modes;
import witnessmark.toml.FaultsException;

/** The configuration file and the profiles it names. */
final class Configuration {
  static final String AREA = "configuration";
  private static final Path USUAL = Path.of("shop.toml");

  private Configuration() {}

  /** What the file says, where it has no fault. */
  static Optional<BridgeConfig> look(
      Optional<Path> file, Map<String, String> environment, Consumer<List<Finding>> found) {
    if (file.isEmpty()) {
      found.accept(List.of(unnamed()));
      return Optional.empty();
    }
    try {
      BridgeConfig config = ConfigFile.read(file.get(), environment);
      found.accept(List.of(Finding.good(AREA, summary(file.get(), config))));
      found.accept(config.brokers().stream().flatMap(Configuration::open).toList());
      return Optional.of(config);
    } catch (FaultsException e) {
      found.accept(
          e.faults().stream()
              .map(
                  f ->
                      Finding.bad(
                          AREA,
                          f.file() + ":" + f.line() + ":" + f.column() + ": " + f.what(),
                          Finding.sentence(f.allowed())))
              .toList());
    } catch (IOException e) {
      found.accept(
          List.of(
              Finding.bad(
                  AREA,
                  file.get().toAbsolutePath() + " cannot be read: " + FileFault.why(e) + ".",
                  next(file.get(), e))));
    }
    return Optional.empty();
  }

  /** Passwords and TLS keys that the wrong people may read. */
  private static Stream<Finding> open(MqttConfig broker) {
    return broker.secrets().stream()
        .flatMap(s -> Modes.open(s).stream())
        .map(what -> Finding.told(AREA, Mark.WARN, what));
  }

  private static String next(Path file, IOException e) {
    return e instanceof AccessDeniedException
        ? "Look as the user who runs the daemon, who must be able to read it: ls -l " + file
        : "Name the file that the daemon runs with: witnessmark doctor --config FILE";
  }

  private static Finding unnamed() {
    return Finding.warn(
        AREA,
        "None is named, so brokers and ports are not looked at.",
        "Name it: witnessmark doctor --config " + (Files.exists(USUAL) ? USUAL : "FILE"));
  }

  private static String summary(Path file, BridgeConfig config) {
    return file
        + " has no fault: bridge "
        + config.name()
        + ", "
        + counted(config.brokers().size(), "broker")
        + ", "
        + counted(config.ports().size(), "port")
        + "; every profile can be read.";
  }

  private static String counted(int n, String what) {
    return n + " " + what + (n == 1 ? "" : "s");
  }
}
