package wrenchsim.wrench;

import java.time.Instant;
import java.util.Objects;
import java.util.Optional;

/**
 * One tightening as the wrench reports it, before it takes the form of any wire.
 *
 * @param wrench the wrench's serial number
 * @param event the wrench's own number for it, absent for a wrench that does not count
 * @param time the wrench's clock, absent for a wrench without one
 * @param torque peak torque, the digits shown
 * @param unit the unit of {@code torque}
 * @param angle degrees, the digits shown, absent for a wrench without angle
 * @param tightening clockwise
 * @param fastener the position, where the wrench knows where it is
 * @param operator the badge, where the wrench knows its holder
 */
public record Reading(
    String wrench,
    Optional<Long> event,
    Optional<Instant> time,
    String torque,
    Unit unit,
    Optional<String> angle,
    boolean tightening,
    Optional<String> fastener,
    Optional<String> operator) {

  public Reading {
    if (wrench.isBlank() || wrench.length() > 64) {
      throw new IllegalArgumentException(
          "a wrench's serial number has 1 to 64 characters, but got '" + wrench + "'");
    }
    event.ifPresent(
        n -> {
          if (n < 0) {
            throw new IllegalArgumentException("an event number is 0 or more, but is " + n);
          }
        });
    Objects.requireNonNull(torque, "torque");
    Objects.requireNonNull(unit, "unit");
  }
}
