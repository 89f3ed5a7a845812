package witnessmark.doctor;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import witnessmark.config.BridgeConfig;
import witnessmark.config.MqttConfig;
import witnessmark.link.mqtt.BrokerTrial;
import witnessmark.link.mqtt.Tried;

/** The brokers of a configuration. */
final class Brokers {
  private final BridgeConfig config;
  private final Map<String, Health> own = new LinkedHashMap<>();

  Brokers(BridgeConfig config) {
    this.config = config;
  }

  static String area(MqttConfig broker) {
    return "broker " + broker.settings().name();
  }

  List<Finding> look(MqttConfig broker, Instant now) {
    List<Finding> found = new ArrayList<>();
    String area = area(broker);
    BrokerTrial.Result result = BrokerTrial.of(broker.settings(), now);
    result.steps().forEach(s -> found.add(finding(area, s)));
    result.health().forEach((topic, health) -> told(broker, topic, health).ifPresent(found::add));
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
  private Optional<Finding> told(MqttConfig broker, String topic, byte[] payload) {
    String name = topic.split("/", -1)[2];
    Health health = Health.read(payload);
    if (!health.alive()) {
      return Optional.empty();
    }
    if (name.equals(config.name())) {
      own.put(area(broker), health);
      return Optional.empty();
    }
    return broker.stations().isEmpty()
        ? Optional.of(
            Finding.bad(
                area(broker),
                "Another bridge, \"" + name + "\", answers for the same stations.",
                "Give each bridge its own stations in its [[mqtt]]. If that one is gone for good: "
                    + clear(name)))
        : Optional.empty();
  }

  /** Takes away what a broker retains of a bridge that is gone. */
  static String clear(String name) {
    return "mosquitto_pub -r -n -t witnessmark/v1/" + name + "/health";
  }

  /** What brokers retain of a bridge of this name at work, by the area of the broker. */
  Map<String, Health> own() {
    return own;
  }
}
