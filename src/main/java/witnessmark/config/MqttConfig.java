package witnessmark.config;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import witnessmark.decode.Profile;
import witnessmark.link.mqtt.MqttSettings;

/**
 * A broker.
 *
 * @param publish whether verdicts, expectations and health go out here
 * @param stations the only ones that are heard on our own topics and told about; empty for all
 * @param mapped topics of other shapes, read through a profile
 * @param secrets the files of the password and of the TLS key
 */
public record MqttConfig(
    MqttSettings settings,
    boolean publish,
    Set<String> stations,
    List<Mapped> mapped,
    List<Path> secrets) {
  public MqttConfig {
    stations = Set.copyOf(stations);
    mapped = List.copyOf(mapped);
    secrets = List.copyOf(secrets);
  }

  /** Whether the station is heard and told about here. */
  public boolean serves(String station) {
    return stations.isEmpty() || stations.contains(station);
  }

  /** One topic whose messages a profile reads as torque events or scans of a station. */
  public record Mapped(String topic, String station, Profile profile) {}
}
