package witnessmark.config;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import witnessmark.decode.Profile;
import witnessmark.decode.ProfileFile;
import witnessmark.desk.StationName;
import witnessmark.toml.FaultsException;
import witnessmark.toml.Section;
import witnessmark.toml.TomlFile;
import witnessmark.toml.Utf8;

/** Reads a configuration file with the profiles it names. */
public final class ConfigFile {
  static final String NAME = "write 1 to 64 letters, digits, and . _ -";
  static final String PATH = "write a path that this system can have";

  private final Path directory;
  private final Map<String, String> environment;
  private final Set<String> names = new HashSet<>();

  ConfigFile(Path directory, Map<String, String> environment) {
    this.directory = directory;
    this.environment = environment;
  }

  /**
   * What the file says.
   *
   * @param file the file; the paths in it are relative to its directory
   * @param environment where {@code password-env} looks
   * @throws FaultsException with every fault of the file, or of the first profile that has any
   * @throws IOException when the file cannot be read
   */
  public static BridgeConfig read(Path file, Map<String, String> environment) throws IOException {
    return parse(file, Utf8.text(file.toString(), Files.readAllBytes(file)), environment);
  }

  /**
   * What the text of such a file says.
   *
   * @throws FaultsException with every fault of the text, or of the first profile that has any
   */
  public static BridgeConfig parse(Path file, String text, Map<String, String> environment) {
    Path directory = file.toAbsolutePath().getParent();
    TomlFile toml = TomlFile.parse(file.toString(), text);
    BridgeConfig config = new ConfigFile(directory, environment).bridge(toml);
    toml.orThrow();
    return config;
  }

  private BridgeConfig bridge(TomlFile toml) {
    Section root = toml.root();
    Optional<Section> bridge = root.section("bridge");
    if (bridge.isEmpty()) {
      root.fault("bridge", "there is no [bridge]", "begin with [bridge] and its name");
    }
    Optional<String> name = bridge.flatMap(b -> b.requiredRead("name", NAME, ConfigFile::named));
    Optional<String> data = bridge.flatMap(b -> b.read("data", PATH, Path::of)).map(Path::toString);
    int queue = bridge.map(b -> (int) b.integer("queue", 16, 100_000).orElse(1000)).orElse(1000);
    Duration every =
        bridge
            .flatMap(b -> b.read("health-every", Durations.ALLOWED, Durations::parse))
            .orElse(Duration.ofSeconds(10));
    long keepFree =
        bridge
            .flatMap(b -> b.read("keep-free", Sizes.ALLOWED, Sizes::parse))
            .orElse(Sizes.parse("200 MB"));
    bridge.ifPresent(Section::finish);
    CheckpointConfig checkpoints =
        root.section("checkpoints")
            .map(s -> CheckpointSection.read(this, s, data.map(this::path)))
            .orElse(CheckpointConfig.USUAL);
    String known = name.orElse("bridge");
    List<MqttConfig> brokers = new ArrayList<>();
    MqttSection mqtt = new MqttSection(this, known);
    root.sections("mqtt").forEach(s -> mqtt.read(s).ifPresent(brokers::add));
    List<SerialConfig> ports = new ArrayList<>();
    SerialSection serial = new SerialSection(this);
    root.sections("serial").forEach(s -> serial.read(s).ifPresent(ports::add));
    Optional<HttpConfig> http = root.section("http").flatMap(HttpSection::read);
    if (!root.has("mqtt") && !root.has("serial")) {
      root.fault(
          "bridge",
          "no wrench can be heard: there is neither [[mqtt]] nor [[serial]]",
          "add at least one of them");
    }
    root.finish();
    return new BridgeConfig(known, data, queue, every, keepFree, checkpoints, brokers, ports, http);
  }

  /** Bridges and links are named like stations: their names are levels of topics, too. */
  private static String named(String text) {
    if (!StationName.fits(text)) {
      throw new IllegalArgumentException("\"" + text + "\" is no name");
    }
    return text;
  }

  /**
   * The path, seen from the file's directory.
   *
   * @throws java.nio.file.InvalidPathException when this system cannot have such a path
   */
  Path path(String text) {
    return directory.resolve(text);
  }

  Optional<String> variable(String name) {
    return Optional.ofNullable(environment.get(name));
  }

  /** The section's name, which no other link may have. */
  Optional<String> name(Section section) {
    Optional<String> name = section.requiredRead("name", NAME, ConfigFile::named);
    name.filter(n -> !names.add(n))
        .ifPresent(
            n ->
                section.fault("name", "the name \"" + n + "\" is used twice", "name it otherwise"));
    return name;
  }

  /** The profile that the section names; a fault where its file cannot be read. */
  Optional<Profile> profile(Section section) {
    Optional<String> named = section.requiredText("profile", "name a profile file");
    Optional<Path> path = section.read("profile", PATH, this::path);
    if (path.isEmpty()) {
      return Optional.empty();
    }
    try {
      String text = Utf8.text(named.orElseThrow(), Files.readAllBytes(path.get()));
      return Optional.of(ProfileFile.parse(named.get(), text));
    } catch (IOException e) {
      Unreadable.fault(section, "profile", "the profile " + path.get(), e);
      return Optional.empty();
    }
  }
}
