package witnessmark.pipeline;

import java.util.List;
import java.util.Optional;
import witnessmark.entry.Entry;
import witnessmark.torque.TorqueEvent;
import witnessmark.wrench.WrenchClock;

/** What a wrench's own event number tells. */
final class Numbering {
  private Numbering() {}

  /**
   * What is odd about the event's number; see {@link witnessmark.entry.Timing#counter}.
   *
   * @param alike events of that wrench on record with that number
   */
  static Optional<String> oddity(
      WrenchClock clock, TorqueEvent event, List<Entry.TorqueTaken> alike) {
    if (!alike.isEmpty()) {
      return Optional.of("used-before");
    }
    return clock.beganAnew(event) ? Optional.of("began-anew") : Optional.empty();
  }

  /** Whether both show the same reading; their times may differ, as after a clock was set. */
  static boolean sameReading(TorqueEvent one, TorqueEvent other) {
    return one.torque().equals(other.torque())
        && one.angle().equals(other.angle())
        && one.direction() == other.direction();
  }
}
