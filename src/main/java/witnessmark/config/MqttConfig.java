package witnessmark.config;

import java.util.List;
import witnessmark.decode.Profile;
import witnessmark.link.mqtt.MqttSettings;

/**
 * A broker.
 *
 * @param publish whether verdicts, expectations and health go out here
 * @param mapped topics of other shapes, read through a profile
 */
public record MqttConfig(MqttSettings settings, boolean publish, List<Mapped> mapped) {
  public MqttConfig {
    mapped = List.copyOf(mapped);
  }

  /** One topic whose messages a profile reads as torque events or scans of a station. */
  public record Mapped(String topic, String station, Profile profile) {}
}
