package witnessmark.job;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.Optional;
import witnessmark.entry.Judged;
import witnessmark.torque.Angle;
import witnessmark.torque.Torque;
import witnessmark.torque.TorqueEvent;
import witnessmark.torque.Verdict;

/**
 * What the pulls on a fastener have left it with, as far as the record shows, until it is loosened.
 *
 * @param held newton metres of the hardest of them, or the end of the band where the entry does not
 *     repeat the reading: what it takes to move it again
 * @param pass the pass of the newest that was judged
 * @param turn degrees that it turned in all when that pass was credited, where they are known
 * @param wrench the wrench of the newest, where it is known
 * @param time the newest's moment by that wrench's own clock
 * @param entry the newest's own entry, in whose order the pulls are
 */
public record Pull(
    BigDecimal held,
    int pass,
    Optional<BigDecimal> turn,
    Optional<String> wrench,
    Optional<Instant> time,
    long entry) {

  /**
   * The pull of a reading. None where it ended below the band and its turn was not counted: it may
   * have been on another fastener then.
   */
  static Optional<Pull> of(JobFold.Sent sent, int pass, Judged judged) {
    boolean under = judged.verdict().equals(Optional.of(Verdict.UNDER_TORQUE));
    Optional<Angle> angle = sent.event().flatMap(TorqueEvent::angle);
    if (under && angle.isPresent() && judged.angleTotal().isEmpty()) {
      return Optional.empty();
    }
    BigDecimal torque =
        sent.event()
            .map(TorqueEvent::torque)
            .or(() -> (under ? judged.low() : judged.high()).map(Torque::parse))
            .map(Torque::newtonMetres)
            .orElse(BigDecimal.ZERO);
    return Optional.of(
        new Pull(
            torque,
            pass,
            judged.angleTotal().or(() -> angle).map(a -> a.degrees().value()),
            sent.event().map(TorqueEvent::wrench),
            sent.event().flatMap(TorqueEvent::time),
            sent.entry()));
  }

  /** This pull after an earlier one, which it cannot have made looser. */
  Pull after(Pull before) {
    return new Pull(held.max(before.held), pass, turn, wrench, time, entry);
  }

  /** A hit on what was tight already: the turn stays that of the fresh fastener. */
  Pull again(Pull before) {
    return new Pull(held.max(before.held), before.pass, before.turn, wrench, time, entry);
  }
}
