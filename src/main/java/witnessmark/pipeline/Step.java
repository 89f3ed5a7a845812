package witnessmark.pipeline;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import witnessmark.decode.Malformed;
import witnessmark.decode.Sample;
import witnessmark.decode.Scanned;
import witnessmark.decode.Torqued;
import witnessmark.entry.Effect;
import witnessmark.entry.Entry;
import witnessmark.entry.Judged;
import witnessmark.entry.Reason;
import witnessmark.job.JobState;
import witnessmark.job.Shop;
import witnessmark.judge.Judge;
import witnessmark.judge.Wording;
import witnessmark.match.Place;
import witnessmark.match.Placement;
import witnessmark.torque.TorqueEvent;
import witnessmark.wrench.Wrench;

/** Decides what one arrival puts on record. Pure: the shop as it stands and the arrival decide. */
public final class Step {
  private static final Duration AHEAD = Duration.ofMinutes(5);
  private static final Duration BEHIND = Duration.ofDays(30);

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
    boolean before = seen.before(event.wrench(), event.number(), fingerprint);
    if (before && event.number().isPresent()) {
      return new Outcome(List.of(), Optional.of(event), true);
    }
    boolean perhaps = before && (event.time().isPresent() || arrival.redelivered());
    Optional<Instant> trusted = event.time().filter(t -> believable(t, arrival.at()));
    Instant moment = trusted.orElse(arrival.at());
    Optional<JobState> job = shop.active(station);
    Judged judged = judge(shop, job, event, moment, perhaps);
    Entry.TorqueTaken entry =
        new Entry.TorqueTaken(
            arrival.at(),
            station,
            arrival.source(),
            event,
            torqued.raw(),
            fingerprint,
            moment,
            trusted.isPresent() ? "wrench" : "bridge",
            Optional.ofNullable(shop.operatorAt().get(station))
                .filter(o -> event.operator().isEmpty()),
            job.map(JobState::job),
            judged);
    return new Outcome(List.of(entry), Optional.of(event), false);
  }

  private static Judged judge(
      Shop shop, Optional<JobState> job, TorqueEvent event, Instant moment, boolean perhaps) {
    if (job.isEmpty() || perhaps) {
      return unplaced(perhaps ? Reason.PERHAPS_REPEATED : Reason.NO_ACTIVE_JOB, event);
    }
    Optional<Wrench> wrench = Optional.ofNullable(shop.wrenches().get(event.wrench()));
    Placement placement = Place.of(job.get(), event);
    return Judge.of(job.get(), placement, event, wrench, moment);
  }

  private static Judged unplaced(Reason reason, TorqueEvent event) {
    Judged judged =
        new Judged(
            Optional.empty(),
            Optional.empty(),
            reason,
            List.of(),
            List.of(),
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

  /**
   * A wrench's clock counts unless it is plainly wrong: ahead of the bridge's, or a month behind.
   */
  private static boolean believable(Instant time, Instant at) {
    return !time.isAfter(at.plus(AHEAD)) && !time.isBefore(at.minus(BEHIND));
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
