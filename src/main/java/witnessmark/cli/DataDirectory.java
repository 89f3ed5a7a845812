package witnessmark.cli;

import java.nio.file.Path;
import java.util.Optional;
import witnessmark.config.BridgeConfig;

/** Where the daemon's data directory is. */
final class DataDirectory {
  private DataDirectory() {}

  /**
   * The directory.
   *
   * @param given on the command line, or null
   * @param file the configuration file, to whose directory its own words are relative
   */
  static Path of(Path given, Optional<BridgeConfig> config, Path file) {
    if (given != null) {
      return given;
    }
    String variable = System.getenv("WITNESSMARK_DATA");
    if (variable != null) {
      return Path.of(variable);
    }
    return config
        .flatMap(BridgeConfig::data)
        .map(d -> file.toAbsolutePath().resolveSibling(d))
        .orElse(Path.of("witnessmark-data"));
  }
}
