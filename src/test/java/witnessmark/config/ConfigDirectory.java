package witnessmark.config;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** A directory with everything that the configuration document's examples name. */
final class ConfigDirectory {
  static final Map<String, String> ENVIRONMENT = Map.of("BROKER_PASSWORD", "from-env", "EMPTY", "");

  private final Path directory;

  ConfigDirectory(Path directory) throws IOException {
    this.directory = directory;
    Files.createDirectories(directory.resolve("profiles"));
    Files.createDirectories(directory.resolve("tls"));
    Files.createDirectories(directory.resolve("checkpoints"));
    try (Stream<Path> profiles = Files.list(Path.of("demo-data/profiles"))) {
      for (Path profile : profiles.filter(p -> p.toString().endsWith(".toml")).toList()) {
        Files.copy(profile, directory.resolve("profiles").resolve(profile.getFileName()));
      }
    }
    for (String pem : List.of("tls/ca.pem", "tls/shop-1.pem", "tls/shop-1.key")) {
      Files.writeString(directory.resolve(pem), "");
    }
    Files.writeString(directory.resolve("broker-password.txt"), "from-file\n");
    Files.writeString(directory.resolve("empty.txt"), "\n");
    Files.write(directory.resolve("latin.txt"), new byte[] {'p', (byte) 0xfc});
  }

  Path file() {
    return directory.resolve("shop.toml");
  }

  Path path(String name) {
    return directory.resolve(name);
  }

  BridgeConfig read(String toml) throws IOException {
    Files.writeString(file(), toml);
    return ConfigFile.read(file(), ENVIRONMENT);
  }
}
