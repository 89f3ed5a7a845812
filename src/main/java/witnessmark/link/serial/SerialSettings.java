package witnessmark.link.serial;

import java.time.Duration;
import java.util.Objects;
import java.util.Optional;
import witnessmark.torque.Label;

/**
 * Which port a link reads, and how the line is set.
 *
 * @param name the link's name in the configuration
 * @param baud bits a second, 50 to 4 000 000
 * @param dataBits 7 or 8
 * @param stopBits 1 or 2
 * @param poll sent again and again where the device only speaks when asked
 * @param pollEvery the time between polls, 10 ms to 3600 s; of no effect without {@code poll}
 */
public record SerialSettings(
    String name,
    PortName port,
    int baud,
    int dataBits,
    int stopBits,
    Parity parity,
    Optional<byte[]> poll,
    Duration pollEvery) {
  private static final Duration SHORTEST = Duration.ofMillis(10);
  private static final Duration LONGEST = Duration.ofSeconds(3600);

  /**
   * @throws IllegalArgumentException when a setting is out of its range
   */
  public SerialSettings {
    Label.check("link name", name);
    Objects.requireNonNull(port, "port");
    Objects.requireNonNull(parity, "parity");
    within("baud", baud, 50, 4_000_000);
    within("data bits", dataBits, 7, 8);
    within("stop bits", stopBits, 1, 2);
    poll = poll.map(byte[]::clone);
    if (poll.isPresent()
        && (pollEvery.compareTo(SHORTEST) < 0 || pollEvery.compareTo(LONGEST) > 0)) {
      throw new IllegalArgumentException("a poll must be every 10 ms to 3600 s");
    }
  }

  @Override
  public Optional<byte[]> poll() {
    return poll.map(byte[]::clone);
  }

  private static void within(String what, int value, int low, int high) {
    if (value < low || value > high) {
      throw new IllegalArgumentException(
          what + " must be " + low + " to " + high + ", found " + value);
    }
  }
}
