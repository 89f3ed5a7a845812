package witnessmark.config;

import java.nio.charset.StandardCharsets;
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
import witnessmark.torque.Label;

/** Reads an {@code [[mqtt]]} section. */
final class MqttSection {
  private static final String HEALTH = "witnessmark/v1/+/health";
  private static final String URL = "write e.g. \"tcp://127.0.0.1:1883\" or \"ssl://host:8883\"";
  private static final String CLIENT_ID = "write such a one, or leave client-id out";

  private final ConfigFile file;
  private final String bridge;

  MqttSection(ConfigFile file, String bridge) {
    this.file = file;
    this.bridge = bridge;
  }

  Optional<MqttConfig> read(Section s) {
    Optional<String> name = file.name(s);
    Optional<String> url = s.requiredRead("url", URL, MqttSettings::checkedUrl);
    Optional<String> clientId = clientId(s, name);
    Optional<MqttAccess> access =
        MqttAccess.read(file, s, url.isEmpty() || url.get().startsWith("ssl://"));
    boolean subscribe = s.bool("subscribe").orElse(true);
    boolean publish = s.bool("publish").orElse(true);
    Set<String> stations = stations(s);
    List<MqttConfig.Mapped> mapped = new ArrayList<>();
    s.sections("map").forEach(m -> map(m).ifPresent(mapped::add));
    s.finish();
    List<String> topics = topics(s, subscribe, stations, mapped);
    if (name.isEmpty() || url.isEmpty() || clientId.isEmpty() || access.isEmpty()) {
      return Optional.empty();
    }
    // one bridge for a broker, unless stations say which are whose
    boolean alone = subscribe && stations.isEmpty();
    String own = "witnessmark/v1/" + bridge + "/health";
    String will = "{\"bridge\":\"" + bridge + "\",\"state\":\"gone\"}";
    return s.attempt(
            "url",
            "compare the keys of this [[mqtt]] with the page on the configuration",
            () ->
                new MqttSettings(
                    name.get(),
                    url.get(),
                    clientId.get(),
                    access.get().user(),
                    access.get().password(),
                    access.get().ca(),
                    access.get().cert(),
                    access.get().key(),
                    topics,
                    watched(alone, publish, own),
                    alone
                        ? List.of()
                        : Stream.concat(ours(Set.of("+")).stream(), Stream.of(HEALTH)).toList(),
                    own,
                    will.getBytes(StandardCharsets.UTF_8)))
        .map(
            settings ->
                new MqttConfig(settings, publish, stations, mapped, access.get().secrets()));
  }

  /** Whose health: of all who answer for the same stations, else of another of the same name. */
  private static List<String> watched(boolean alone, boolean publish, String own) {
    return alone ? List.of(HEALTH) : publish ? List.of(own) : List.of();
  }

  /** The usual one is made of two names, which may be too long together. */
  private Optional<String> clientId(Section s, Optional<String> name) {
    if (s.has("client-id")) {
      return s.read("client-id", CLIENT_ID, t -> Label.check("client-id", t));
    }
    return name.flatMap(
        n ->
            s.attempt(
                "name",
                "name another, shorter one with client-id",
                () -> Label.check("the client-id witnessmark-BRIDGE-NAME", usual(n))));
  }

  private String usual(String name) {
    return "witnessmark-" + bridge + "-" + name;
  }

  /** Everything that is read here. */
  private static List<String> topics(
      Section s, boolean subscribe, Set<String> stations, List<MqttConfig.Mapped> mapped) {
    List<String> topics =
        new ArrayList<>(
            subscribe ? ours(stations.isEmpty() ? Set.of("+") : stations) : List.<String>of());
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
    return topics;
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
    Optional<String> topic =
        m.requiredRead("topic", "name the topic to read", MqttSettings::checkedTopic);
    Optional<String> station =
        m.requiredRead("station", "name the station it is for", StationName::check);
    Optional<Profile> profile = file.profile(m);
    m.finish();
    return topic.isPresent() && station.isPresent() && profile.isPresent()
        ? Optional.of(new MqttConfig.Mapped(topic.get(), station.get(), profile.get()))
        : Optional.empty();
  }
}
