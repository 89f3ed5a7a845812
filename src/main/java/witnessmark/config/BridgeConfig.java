package witnessmark.config;

import java.time.Duration;
import java.util.List;
import java.util.Optional;

/**
 * What the daemon is to do.
 *
 * @param name the bridge's name, part of a topic
 * @param data the data directory, where the file names one
 * @param queue how many messages may wait for the disk that their senders keep, and how many that
 *     they do not, 16 to 100 000
 * @param healthEvery time between health messages
 * @param keepFree free bytes on the disk of the data directory, below which health warns
 */
public record BridgeConfig(
    String name,
    Optional<String> data,
    int queue,
    Duration healthEvery,
    long keepFree,
    List<MqttConfig> brokers,
    List<SerialConfig> ports) {
  public BridgeConfig {
    brokers = List.copyOf(brokers);
    ports = List.copyOf(ports);
  }
}
