package witnessmark.decode;

import java.time.Duration;
import java.util.Objects;

/**
 * What to send to a wrench that must be asked.
 *
 * @param send the bytes, 1 or more
 * @param every how often, 10 ms to 3600 s
 */
public record Poll(Bytes send, Duration every) {
  public static final Duration SHORTEST = Duration.ofMillis(10);
  public static final Duration LONGEST = Duration.ofSeconds(3600);

  /**
   * @throws IllegalArgumentException when there is nothing to send, or the interval is out of range
   */
  public Poll {
    Objects.requireNonNull(every, "every");
    if (send.size() == 0) {
      throw new IllegalArgumentException("there is nothing to send");
    }
    if (every.compareTo(SHORTEST) < 0 || every.compareTo(LONGEST) > 0) {
      throw new IllegalArgumentException("the interval is out of range");
    }
  }

  /**
   * Reads {@code "500 ms"} or {@code "2 s"}.
   *
   * @throws IllegalArgumentException when it is not so written or out of range
   */
  static Duration interval(String text) {
    if (!text.matches("[0-9]{1,9} m?s")) {
      throw new IllegalArgumentException("\"" + text + "\" is no interval");
    }
    long number = Long.parseLong(text.substring(0, text.indexOf(' ')));
    Duration every = text.endsWith("ms") ? Duration.ofMillis(number) : Duration.ofSeconds(number);
    if (every.compareTo(SHORTEST) < 0 || every.compareTo(LONGEST) > 0) {
      throw new IllegalArgumentException("\"" + text + "\" is out of range");
    }
    return every;
  }
}
