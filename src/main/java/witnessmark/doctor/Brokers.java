package witnessmark.doctor;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import witnessmark.config.BridgeConfig;
import witnessmark.config.MqttConfig;
import witnessmark.link.mqtt.BrokerTrial;
import witnessmark.link.mqtt.Tried;

/** The brokers of a configuration. */
final class Brokers {
  private final BridgeConfig config;
  private final boolean running;

  /**
   * @param running whether a daemon is at work
   */
  Brokers(BridgeConfig config, boolean running) {
    this.config = config;
    this.running = running;
  }

  List<Finding> look(Instant now) {
    List<Finding> found = new ArrayList<>();
    for (MqttConfig broker : config.brokers()) {
      String area = "broker " + broker.settings().name();
      BrokerTrial.Result result = BrokerTrial.of(broker.settings(), now);
      result.steps().forEach(s -> found.add(finding(area, s)));
      result.health().forEach((topic, health) -> told(area, broker, topic, health, found));
    }
    return found;
  }

  private static Finding finding(String area, Tried step) {
    Mark mark =
        switch (step.outcome()) {
          case GOOD -> Mark.GOOD;
          case SOON -> Mark.WARN;
          case FAILED -> Mark.BAD;
        };
    return new Finding(
        area, mark, step.found(), Optional.of(step.next()).filter(n -> !n.isEmpty()));
  }

  /** What bridges say of themselves there: ours, and others that answer for the same stations. */
  private void told(
      String area, MqttConfig broker, String topic, byte[] payload, List<Finding> found) {
    String name = topic.split("/", -1)[2];
    JsonNode health = read(payload);
    String state = health.path("state").asText();
    if (name.equals(config.name())) {
      if (running && state.equals("degraded")) {
        found.add(
            Finding.warn(
                area,
                "The running bridge says it is degraded: " + health.path("reason").asText(),
                "Mend what it names; it then goes on by itself."));
      }
    } else if (broker.stations().isEmpty() && (state.equals("ok") || state.equals("degraded"))) {
      found.add(
          Finding.bad(
              area,
              "Another bridge, \"" + name + "\", answers for the same stations.",
              "Give each bridge its own stations in its [[mqtt]]. If that one is gone for good:"
                  + " mosquitto_pub -r -n -t witnessmark/v1/"
                  + name
                  + "/health"));
    }
  }

  private static JsonNode read(byte[] payload) {
    ObjectMapper mapper = new ObjectMapper();
    try {
      JsonNode health = mapper.readTree(payload);
      return health == null ? mapper.createObjectNode() : health;
    } catch (IOException e) {
      return mapper.createObjectNode(); // nobody's health
    }
  }
}
