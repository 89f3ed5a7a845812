package wrenchsim.wrench;

import java.util.Objects;
import java.util.Optional;

/**
 * What a wrench is, apart from what it has lived through.
 *
 * @param serial its serial number, 1 to 64 printable ASCII characters without {@code |}
 * @param gauge its measuring part
 * @param clock its clock, absent when it has none
 * @param firstEvent the number of its first event, absent when it does not count
 * @param knowsPosition whether it reports the fastener it is on
 * @param operator the badge it reports, where it does
 * @param life what becomes of it in use
 */
public record WrenchSpec(
    String serial,
    Gauge gauge,
    Optional<WrenchClock> clock,
    Optional<Long> firstEvent,
    boolean knowsPosition,
    Optional<String> operator,
    Life life) {

  /** A wrench that stays as it is. */
  public WrenchSpec(
      String serial,
      Gauge gauge,
      Optional<WrenchClock> clock,
      Optional<Long> firstEvent,
      boolean knowsPosition,
      Optional<String> operator) {
    this(serial, gauge, clock, firstEvent, knowsPosition, operator, Life.EVEN);
  }

  public WrenchSpec {
    if (!serial.matches("[\\x21-\\x7E&&[^|]][\\x20-\\x7E&&[^|]]{0,63}")) {
      throw new IllegalArgumentException(
          "a serial number is 1 to 64 printable ASCII characters without '|', but got '"
              + serial
              + "'");
    }
    Objects.requireNonNull(gauge, "gauge");
    Objects.requireNonNull(life, "life");
    firstEvent.ifPresent(
        n -> {
          if (n < 0) {
            throw new IllegalArgumentException("the first event number is 0 or more, but is " + n);
          }
        });
  }
}
