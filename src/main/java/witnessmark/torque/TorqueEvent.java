package witnessmark.torque;

import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * One completed tightening or loosening as a wrench reports it.
 *
 * @param wrench the wrench's serial number, 1 to 64 printable characters
 * @param number the wrench's own number for this event, 0 or more
 * @param time the wrench's clock at the event
 * @param torque peak torque as sent
 * @param angle degrees turned since the snug threshold
 * @param breakaway torque at which it began to turn, where the wrench watches that
 * @param direction which way it turned
 * @param fastener the position, where the sender knows it, e.g. {@code carrier-left/3}
 * @param operator the badge, where the sender knows it
 */
public record TorqueEvent(
    String wrench,
    OptionalLong number,
    Optional<Instant> time,
    Torque torque,
    Optional<Angle> angle,
    Optional<Torque> breakaway,
    Direction direction,
    Optional<String> fastener,
    Optional<String> operator) {

  /** An event of a wrench that does not watch where the turning begins. */
  public TorqueEvent(
      String wrench,
      OptionalLong number,
      Optional<Instant> time,
      Torque torque,
      Optional<Angle> angle,
      Direction direction,
      Optional<String> fastener,
      Optional<String> operator) {
    this(wrench, number, time, torque, angle, Optional.empty(), direction, fastener, operator);
  }

  /**
   * @throws IllegalArgumentException when a text is not 1 to 64 printable characters, or the number
   *     is negative
   */
  public TorqueEvent {
    Label.check("wrench", wrench);
    if (number.isPresent() && number.getAsLong() < 0) {
      throw new IllegalArgumentException(
          "event number " + number.getAsLong() + " is negative; 0 or more is allowed");
    }
    Objects.requireNonNull(time, "time");
    Objects.requireNonNull(torque, "torque");
    Objects.requireNonNull(angle, "angle");
    Objects.requireNonNull(breakaway, "breakaway");
    Objects.requireNonNull(direction, "direction");
    fastener.ifPresent(f -> Label.check("fastener", f));
    operator.ifPresent(o -> Label.check("operator", o));
  }
}
