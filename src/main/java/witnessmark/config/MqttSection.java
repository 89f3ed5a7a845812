package witnessmark.config;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import witnessmark.decode.Profile;
import witnessmark.desk.StationName;
import witnessmark.link.mqtt.MqttSettings;
import witnessmark.toml.Section;

/** Reads an {@code [[mqtt]]} section. */
final class MqttSection {
  private static final String HEALTH = "witnessmark/v1/+/health";

  private final ConfigFile file;
  private final String bridge;

  MqttSection(ConfigFile file, String bridge) {
    this.file = file;
    this.bridge = bridge;
  }

  Optional<MqttConfig> read(Section s) {
    Optional<String> name = file.name(s);
    Optional<String> url =
        s.requiredText("url", "e.g. \"tcp://127.0.0.1:1883\" or \"ssl://host:8883\"");
    Optional<String> clientId = s.text("client-id");
    Optional<String> user = s.text("user");
    Optional<Path> passwordFile = s.read("password-file", ConfigFile.PATH, file::path);
    Optional<String> password = password(s, passwordFile);
    Optional<Path> ca = existing(s, "ca-file");
    Optional<Path> cert = existing(s, "cert-file");
    Optional<Path> key = existing(s, "key-file");
    boolean subscribe = s.bool("subscribe").orElse(true);
    boolean publish = s.bool("publish").orElse(true);
    Set<String> stations = stations(s);
    List<MqttConfig.Mapped> mapped = new ArrayList<>();
    s.sections("map").forEach(m -> map(m).ifPresent(mapped::add));
    s.finish();
    if (name.isEmpty() || url.isEmpty()) {
      return Optional.empty();
    }
    List<String> all = ours(Set.of("+"));
    List<String> wanted =
        subscribe ? ours(stations.isEmpty() ? Set.of("+") : stations) : List.<String>of();
    // one bridge for a broker, unless stations say which are whose
    boolean alone = subscribe && stations.isEmpty();
    List<String> topics = new ArrayList<>(wanted);
    for (MqttConfig.Mapped m : mapped) {
      if (topics.contains(m.topic())) {
        s.fault("map", "the topic \"" + m.topic() + "\" is mapped twice", "map it once");
      }
      topics.add(m.topic());
      if (!stations.isEmpty() && !stations.contains(m.station())) {
        s.fault(
            "map",
            "station \"" + m.station() + "\" of topic \"" + m.topic() + "\" is not in stations",
            "add it there");
      }
    }
    List<Path> secrets = Stream.concat(passwordFile.stream(), key.stream()).toList();
    String will = "{\"bridge\":\"" + bridge + "\",\"state\":\"gone\"}";
    return s.attempt(
            "url",
            "mend this section",
            () ->
                new MqttSettings(
                    name.get(),
                    url.get(),
                    clientId.orElse("witnessmark-" + bridge + "-" + name.get()),
                    user,
                    password,
                    ca,
                    cert,
                    key,
                    topics,
                    alone ? List.of(HEALTH) : List.of(),
                    alone ? List.of() : all,
                    "witnessmark/v1/" + bridge + "/health",
                    will.getBytes(StandardCharsets.UTF_8)))
        .map(settings -> new MqttConfig(settings, publish, stations, mapped, secrets));
  }

  private static List<String> ours(Collection<String> stations) {
    return stations.stream()
        .flatMap(t -> Stream.of("witnessmark/v1/" + t + "/torque", "witnessmark/v1/" + t + "/scan"))
        .toList();
  }

  private static Set<String> stations(Section s) {
    List<String> named = s.texts("stations").orElse(List.of());
    if (s.isEmptyList("stations")) {
      s.fault("stations", "stations is an empty list", "name at least one, or leave stations out");
    }
    Set<String> stations = new LinkedHashSet<>();
    for (int i = 0; i < named.size(); i++) {
      String name = named.get(i);
      if (!StationName.fits(name)) {
        s.fault("stations", i, "\"" + name + "\" is no station's name", ConfigFile.NAME);
      } else if (!stations.add(name)) {
        s.fault("stations", i, "station \"" + name + "\" is named twice", "name it once");
      }
    }
    return stations;
  }

  private Optional<MqttConfig.Mapped> map(Section m) {
    Optional<String> topic = m.requiredText("topic", "name the topic to read");
    Optional<String> station =
        m.requiredRead("station", "name the station it is for", StationName::check);
    Optional<Profile> profile = file.profile(m);
    topic
        .filter(t -> t.contains("+") || t.contains("#"))
        .ifPresent(t -> m.fault("topic", "\"" + t + "\" has a wildcard", "name each topic"));
    m.finish();
    return topic.isPresent() && station.isPresent() && profile.isPresent()
        ? Optional.of(new MqttConfig.Mapped(topic.get(), station.get(), profile.get()))
        : Optional.empty();
  }

  private Optional<String> password(Section s, Optional<Path> from) {
    Optional<String> variable = s.text("password-env");
    if (variable.isPresent() && from.isPresent()) {
      s.fault("password-env", "there are two sources of the password", "keep one of them");
    }
    if (variable.isPresent()) {
      Optional<String> value = file.variable(variable.get());
      if (value.isEmpty()) {
        s.fault(
            "password-env",
            "the environment has no " + variable.get(),
            "set it, or use password-file");
      }
      return value;
    }
    try {
      return from.isPresent()
          ? Optional.of(Files.readString(from.get()).strip())
          : Optional.empty();
    } catch (IOException e) {
      unreadable(s, "password-file", from.get());
      return Optional.empty();
    }
  }

  /** The path is given back even where it cannot be read, so that one fault makes no second. */
  private Optional<Path> existing(Section s, String key) {
    Optional<Path> path = s.read(key, ConfigFile.PATH, file::path);
    path.filter(p -> !Files.isReadable(p)).ifPresent(p -> unreadable(s, key, p));
    return path;
  }

  private static void unreadable(Section s, String key, Path path) {
    s.fault(key, path + " cannot be read", "name a readable file, relative to this one");
  }
}
