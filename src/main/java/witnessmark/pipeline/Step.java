package witnessmark.pipeline;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import witnessmark.decode.Malformed;
import witnessmark.decode.Sample;
import witnessmark.decode.Scanned;
import witnessmark.decode.Torqued;
import witnessmark.entry.CalibrationEnd;
import witnessmark.entry.Effect;
import witnessmark.entry.Entry;
import witnessmark.entry.Judged;
import witnessmark.entry.Objection;
import witnessmark.entry.Reason;
import witnessmark.entry.Timing;
import witnessmark.job.Shop;
import witnessmark.judge.Wording;
import witnessmark.torque.TorqueEvent;
import witnessmark.wrench.Uses;

/** Decides what one arrival puts on record. Pure: the shop as it stands and the arrival decide. */
public final class Step {
  private Step() {}

  /** The entries that the arrival makes. */
  public static Outcome take(Shop shop, Arrival arrival, Seen seen) {
    if (arrival.decoded() instanceof Malformed m) {
      return Outcome.recorded(refused(arrival, m));
    }
    String station =
        arrival
            .station()
            .orElseThrow(() -> new IllegalArgumentException("a readable arrival has a station"));
    if (arrival.decoded() instanceof Torqued t) {
      return torque(shop, station, arrival, t, seen);
    }
    if (arrival.decoded() instanceof Scanned s) {
      return Scans.take(shop, station, arrival, s, seen);
    }
    throw new IllegalStateException("nothing is done with " + arrival.decoded().getClass());
  }

  /** What goes on record when deciding about an arrival failed. */
  static Outcome undecided(Arrival arrival, RuntimeException fault) {
    String raw =
        arrival.decoded() instanceof Torqued t
            ? t.raw()
            : arrival.decoded() instanceof Scanned s ? s.raw() : "";
    Sample sample = Sample.of(raw.getBytes(StandardCharsets.UTF_8));
    String reason = "this program failed to decide about it: " + fault.getClass().getSimpleName();
    return Outcome.recorded(refused(arrival, new Malformed(reason, sample)));
  }

  private static Outcome torque(
      Shop shop, String station, Arrival arrival, Torqued torqued, Seen seen) {
    TorqueEvent event = torqued.event();
    String fingerprint = Fingerprint.of(event);
    Predicate<Entry.TorqueTaken> likewise = likewise(shop, station, arrival, event);
    boolean told = event.time().isPresent() || arrival.redelivered();
    boolean before =
        (event.number().isPresent() || told)
            && seen.same(event.wrench(), event.number(), fingerprint).stream().anyMatch(likewise);
    if (before && event.number().isPresent()) {
      return new Outcome(List.of(), Optional.of(event), true);
    }
    List<Entry.TorqueTaken> alike =
        event.number().isPresent()
            ? seen.numbered(event.wrench(), event.number().getAsLong()).stream()
                .filter(likewise)
                .toList()
            : List.of();
    Optional<String> odd = Numbering.oddity(shop.clock(event, Optional.empty()), event, alike);
    Timing timing = Timed.of(shop.clock(event, odd), event, arrival, odd);
    boolean perhaps =
        event.number().isPresent()
            ? alike.stream().anyMatch(t -> Numbering.sameReading(t.event(), event))
            : before;
    Entry.TorqueTaken undecided =
        new Entry.TorqueTaken(
            arrival.at(),
            station,
            arrival.source(),
            event,
            torqued.raw(),
            fingerprint,
            timing,
            Optional.empty(),
            Optional.ofNullable(shop.operatorAt().get(station))
                .filter(o -> event.operator().isEmpty()),
            Optional.empty(),
            unplaced(Reason.NO_ACTIVE_JOB, List.of(), event));
    List<Entry> entries = new ArrayList<>(Joining.of(shop, undecided, perhaps, seen));
    Optional.ofNullable(shop.uses().get(event.wrench()))
        .filter(Uses::lastIsNext)
        .ifPresent(u -> entries.add(usedUp(event.wrench(), u, arrival)));
    return new Outcome(entries, Optional.of(event), false);
  }

  /**
   * Which readings may be this one sent before: those that came by the same channel, and of those
   * by a way by which the wrench reports, and of the others, only its like. So who speaks in a
   * wrench's name elsewhere cannot use up its numbers.
   */
  private static Predicate<Entry.TorqueTaken> likewise(
      Shop shop, String station, Arrival arrival, TorqueEvent event) {
    boolean own = shop.mayReport(event.wrench(), arrival.source(), station, arrival.at());
    return taken -> taken.source().equals(arrival.source()) || shop.fromItsSource(taken) == own;
  }

  /** Readings from the next millisecond on are no longer by a calibration in force. */
  private static Entry usedUp(String wrench, Uses uses, Arrival arrival) {
    return new Entry.CalibrationEnded(
        arrival.at(),
        wrench,
        arrival.at().plusMillis(1),
        CalibrationEnd.OPERATIONS_USED_UP,
        Optional.empty(),
        Optional.of(uses.operations() + " readings since the calibration"));
  }

  static Judged unplaced(Reason reason, List<Objection> objections, TorqueEvent event) {
    Judged judged =
        new Judged(
            Optional.empty(),
            Optional.empty(),
            reason,
            List.of(),
            objections,
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Effect.NONE,
            List.of(),
            "");
    return Wording.told(judged, event);
  }

  private static Entry refused(Arrival arrival, Malformed m) {
    return new Entry.Refused(
        arrival.at(),
        arrival.station(),
        arrival.source(),
        m.reason(),
        m.sample().head(),
        m.sample().length(),
        m.sample().sha256());
  }
}
