package witnessmark.job;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.Optional;
import witnessmark.entry.Entry;
import witnessmark.entry.Judged;
import witnessmark.entry.Reason;
import witnessmark.torque.Angle;
import witnessmark.torque.Torque;
import witnessmark.torque.TorqueEvent;
import witnessmark.torque.Verdict;

/**
 * What the pulls on a fastener have left it with, as far as the record shows, until it is loosened.
 *
 * @param held newton metres of the hardest of them: what it takes to move it again
 * @param pass the pass of the newest that was judged
 * @param turn degrees that it turned in all when that pass was credited, where they are known
 * @param wrench the wrench of the newest, where it is known
 * @param time the newest's moment by that wrench's own clock
 * @param observed whether its position was named, and not counted
 * @param moment the newest's place in the job's history
 * @param entry the newest's own entry
 */
public record Pull(
    BigDecimal held,
    int pass,
    Optional<BigDecimal> turn,
    Optional<String> wrench,
    Optional<Instant> time,
    boolean observed,
    Instant moment,
    long entry) {
  /** Whether this one happened after the other. */
  public boolean newerThan(Pull other) {
    int order = moment.compareTo(other.moment);
    return order == 0 ? entry > other.entry : order > 0;
  }

  /** Whether that wrench made it. */
  public boolean by(String serial) {
    return wrench.isPresent() && wrench.get().equals(serial);
  }

  /**
   * The pull of a torque event as it is decided now. None where it ended below the band and its
   * turn was not counted: it may have been on another fastener then.
   */
  static Optional<Pull> of(Act act, Judged judged, int pass) {
    if (!(act.entry() instanceof Entry.TorqueTaken taken)) {
      return Optional.of(placed(act, judged, pass));
    }
    TorqueEvent event = taken.event();
    if (judged.verdict().equals(Optional.of(Verdict.UNDER_TORQUE))
        && event.angle().isPresent()
        && judged.angleTotal().isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new Pull(
            event.torque().newtonMetres(),
            pass,
            judged.angleTotal().or(event::angle).map(Pull::degrees),
            Optional.of(event.wrench()),
            event.time(),
            observed(judged.reason()),
            act.moment(),
            act.n()));
  }

  /**
   * The pull of a reading that came without a job and that a person placed: the entry does not
   * repeat the reading, so that the end of the band stands for its torque.
   */
  private static Pull placed(Act act, Judged judged, int pass) {
    Optional<String> edge =
        judged.verdict().equals(Optional.of(Verdict.UNDER_TORQUE)) ? judged.low() : judged.high();
    return new Pull(
        edge.map(Torque::parse).map(Torque::newtonMetres).orElse(BigDecimal.ZERO),
        pass,
        judged.angleTotal().map(Pull::degrees),
        Optional.empty(),
        Optional.empty(),
        true,
        act.moment(),
        act.n());
  }

  /** This pull after an earlier one, which it cannot have made looser. */
  Pull after(Pull before) {
    return new Pull(held.max(before.held), pass, turn, wrench, time, observed, moment, entry);
  }

  /** A hit on what was tight already: the turn stays that of the fresh fastener. */
  Pull again(Pull before) {
    return new Pull(
        held.max(before.held),
        before.pass,
        before.turn,
        wrench,
        time,
        before.observed,
        moment,
        entry);
  }

  private static boolean observed(Reason reason) {
    return reason == Reason.NAMED_BY_EVENT
        || reason == Reason.NAMED_BY_SCAN
        || reason == Reason.ASSIGNED_BY_PERSON;
  }

  private static BigDecimal degrees(Angle angle) {
    return angle.degrees().value();
  }
}
