package witnessmark.benchmark;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalLong;
import witnessmark.decode.Torqued;
import witnessmark.entry.Effect;
import witnessmark.entry.Entry;
import witnessmark.entry.Reason;
import witnessmark.pipeline.Arrival;
import witnessmark.pipeline.Outcome;
import witnessmark.torque.Angle;
import witnessmark.torque.Direction;
import witnessmark.torque.Torque;
import witnessmark.torque.TorqueEvent;

/**
 * A reading with the decision that it must get, so that nothing else is measured.
 *
 * @param entries how many entries it must make
 */
record Taken(Arrival arrival, Reason reason, Effect effect, int entries) {
  static final Instant NOW = Instant.parse("2026-11-25T10:00:00Z");
  private static final Duration APART = Duration.ofSeconds(10);

  /** The nth of a job done in order, counted from 0: the expected fastener, turned as usual. */
  static Taken fresh(int nth) {
    return of(nth, Work.torque(nth), "41.2", Reason.NEXT_IN_SEQUENCE, Effect.CREDITED);
  }

  /**
   * A second hit just after the nth. Its angle tells it once its group has shown in that pass how
   * far a fresh one turns; before, it is not counted or asked about.
   */
  static Taken again(int nth) {
    if (Work.endsFinal(nth)) {
      return again(nth, Reason.NEXT_OR_AGAIN, Effect.ASKS);
    }
    return Work.endsPass(nth)
        ? again(nth, Reason.NEXT_IN_SEQUENCE, Effect.AGAIN)
        : again(nth, Reason.HIT_AGAIN_BY_ANGLE, Effect.RECHECKED);
  }

  private static Taken again(int nth, Reason reason, Effect effect) {
    return of(nth, Work.torque(nth), "1.5", reason, effect);
  }

  /** A pull on the nth that ended below its band; {@link #rest} goes on from it. */
  static Taken tooLow(int nth) {
    return of(nth, Work.low(nth), "33.0", Reason.NEXT_IN_SEQUENCE, Effect.AGAIN);
  }

  static Taken rest(int nth) {
    return of(nth, Work.torque(nth), "8.2", Reason.NEXT_IN_SEQUENCE, Effect.CREDITED);
  }

  /** The nth, out of the wrench's store after as many later ones, each of which moves on by it. */
  static Taken late(int nth, int later) {
    Taken taken = fresh(nth);
    Arrival a = taken.arrival;
    Instant at = a.at().plus(APART.multipliedBy(later)).plusSeconds(1);
    Arrival stored = new Arrival(a.station(), a.source(), at, false, true, a.decoded());
    return new Taken(stored, taken.reason, taken.effect, 1 + later);
  }

  private static Taken of(int nth, String torque, String angle, Reason reason, Effect effect) {
    Instant at = NOW.plus(APART.multipliedBy(nth));
    TorqueEvent event =
        new TorqueEvent(
            Work.wrench(nth),
            OptionalLong.of(nth),
            Optional.of(at),
            Torque.parse(torque + " N.m"),
            Optional.of(Angle.of(angle)),
            Direction.CW,
            Optional.empty(),
            Optional.empty());
    String raw = new String(Work.reading(nth, event.wrench(), torque, ""));
    return new Taken(
        new Arrival(
            Optional.of(Work.STATION), "benchmark", at, false, false, new Torqued(event, raw)),
        reason,
        effect,
        1);
  }

  void check(Outcome outcome) {
    Entry.TorqueTaken entry = (Entry.TorqueTaken) outcome.entries().get(0);
    if (entry.judged().reason() != reason
        || entry.judged().effect() != effect
        || outcome.entries().size() != entries) {
      throw new IllegalStateException(
          "expected " + reason + ", " + effect + ", entries: " + entries + "; not: " + outcome);
    }
  }
}
