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
 * @param checkpoints how checkpoints of the log are handed outside
 * @param http where health and figures are served, if anywhere
 */
public record BridgeConfig(
    String name,
    Optional<String> data,
    int queue,
    Duration healthEvery,
    long keepFree,
    CheckpointConfig checkpoints,
    List<MqttConfig> brokers,
    List<SerialConfig> ports,
    Optional<HttpConfig> http) {
  public BridgeConfig {
    brokers = List.copyOf(brokers);
    ports = List.copyOf(ports);
  }
}
