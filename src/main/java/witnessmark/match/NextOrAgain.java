package witnessmark.match;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import witnessmark.entry.Reason;
import witnessmark.job.Condition;
import witnessmark.job.JobState;
import witnessmark.job.Pull;
import witnessmark.procedure.Stage;
import witnessmark.torque.Side;
import witnessmark.torque.TorqueEvent;

/**
 * Tells a reading of the fastener that is expected from a second hit on one that is tight. What the
 * reading leaves open is asked.
 */
final class NextOrAgain {
  private final JobState job;
  private final TorqueEvent event;
  private final Placement expected;
  private final int fastener;
  private final Stage stage;

  private NextOrAgain(JobState job, TorqueEvent event, Placement expected) {
    this.job = job;
    this.event = event;
    this.expected = expected;
    this.fastener = expected.fastener().orElseThrow();
    this.stage = expected.stage().orElseThrow();
  }

  /**
   * @param expected where the order of work puts the reading
   */
  static Placement of(JobState job, TorqueEvent event, Placement expected) {
    return new NextOrAgain(job, event, expected).placed();
  }

  private Placement placed() {
    Evidence evidence = Evidence.of(job, fastener, stage, event);
    return switch (evidence.sign()) {
      case FRESH -> Elsewhere.orThere(job, event, expected);
      case SILENT -> byTime();
      case TIGHT, EITHER -> weighed(evidence);
    };
  }

  private Placement weighed(Evidence evidence) {
    boolean tightItself = evidence.sign() == Sign.TIGHT && Tight.toReplace(job.condition(fastener));
    if (tightItself || Tight.unreplaced(job, fastener, event)) {
      return again(job, event, fastener, -1, Reason.NOT_REPLACED);
    }
    Tight tight = Tight.of(job, event, fastener);
    if (!tight.any()) {
      // A window refuses it; without one, it is not known why it was tight.
      boolean odd = evidence.sign() == Sign.TIGHT && Bands.pass(stage).angle().isEmpty();
      return odd ? asks(OptionalInt.empty()) : Elsewhere.orThere(job, event, expected);
    }
    if (tight.side() == Side.ABOVE) {
      return asks(tight.newest());
    }
    // A wrench that may not be used on the expected one could not have it credited anyway.
    boolean useless = !Bands.allows(stage, event.wrench());
    if ((evidence.sign() == Sign.TIGHT || useless) && tight.newest().isPresent()) {
      return again(job, event, tight.newest().getAsInt(), fastener, evidence.again());
    }
    Side side = Bands.side(stage, event.torque());
    boolean harmless = side == Side.BELOW || (side == Side.INSIDE && useless);
    return harmless ? notCounted() : asks(tight.newest());
  }

  /** A second hit on the fastener, or on one of its group that it could be as well. */
  static Placement again(JobState job, TorqueEvent event, int hit, int but, Reason reason) {
    return Placement.on(
        reason,
        hit,
        job.plan().stage(hit, Tight.last(job.condition(hit))),
        Tight.others(job, event, hit, but));
  }

  /** Where the wrench came again sooner than a hand reaches the next fastener. */
  private Placement byTime() {
    OptionalInt last = tooSoon();
    if (last.isEmpty() || last.getAsInt() == fastener) {
      return Elsewhere.orThere(job, event, expected);
    }
    Condition condition = job.condition(last.getAsInt());
    Stage its = job.plan().stage(last.getAsInt(), Tight.last(condition));
    Side side = Bands.side(its, event.torque());
    if (condition.stands(its.pass()) && side == Side.INSIDE) {
      return Placement.on(Reason.HIT_AGAIN_BY_TIME, last.getAsInt(), its);
    }
    return side == Side.BELOW && below() ? notCounted() : asks(last);
  }

  private OptionalInt tooSoon() {
    Optional<BigDecimal> least = Bands.step(stage).care().telling().secondsBetween();
    if (least.isEmpty() || event.time().isEmpty()) {
      return OptionalInt.empty();
    }
    OptionalInt last = Tight.lastPulledBy(job, event.wrench());
    return last.isPresent() && sooner(job.condition(last.getAsInt()).pull().get(), least.get())
        ? last
        : OptionalInt.empty();
  }

  private boolean sooner(Pull pull, BigDecimal least) {
    Instant now = event.time().orElseThrow();
    return pull.time().filter(t -> !now.isBefore(t)).isPresent()
        && seconds(Duration.between(pull.time().get(), now)).compareTo(least) < 0;
  }

  static BigDecimal seconds(Duration duration) {
    return BigDecimal.valueOf(duration.getSeconds()).add(BigDecimal.valueOf(duration.getNano(), 9));
  }

  private boolean below() {
    return Bands.side(stage, event.torque()) == Side.BELOW;
  }

  /** It ended too low, whichever it was; its turn may be another's. */
  private Placement notCounted() {
    return Elsewhere.orThere(job, event, expected).notCounted();
  }

  private Placement asks(OptionalInt again) {
    List<String> could = new ArrayList<>(List.of(job.plan().name(fastener)));
    again.ifPresent(f -> could.add(job.plan().name(f)));
    return Placement.nowhere(Reason.NEXT_OR_AGAIN, could);
  }
}
