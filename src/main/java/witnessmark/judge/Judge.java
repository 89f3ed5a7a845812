package witnessmark.judge;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import witnessmark.entry.Effect;
import witnessmark.entry.Judged;
import witnessmark.entry.Objection;
import witnessmark.entry.Reason;
import witnessmark.job.JobState;
import witnessmark.job.Undo;
import witnessmark.match.Placement;
import witnessmark.procedure.Pass;
import witnessmark.procedure.Stage;
import witnessmark.procedure.TightenStep;
import witnessmark.torque.Angle;
import witnessmark.torque.AngleBand;
import witnessmark.torque.Direction;
import witnessmark.torque.Side;
import witnessmark.torque.TorqueEvent;
import witnessmark.torque.Verdict;
import witnessmark.wrench.Wrench;

/** Judges a placed torque event and says what it changes. */
public final class Judge {
  private Judge() {}

  /**
   * The event's verdict and effect.
   *
   * <p>A reading above its band, or turned too far, makes the fastener nonconforming even where the
   * wrench cannot be relied on: the fastener may be damaged. A good reading counts only from a
   * wrench without objection, on a fastener that is due.
   *
   * @param moment when the event happened
   */
  public static Judged of(
      JobState job,
      Placement placement,
      TorqueEvent event,
      Optional<Wrench> wrench,
      Instant moment) {
    List<Objection> objections = Objections.of(event, wrench, moment, placement.stage());
    Optional<Pass> pass = placement.stage().map(Judge::pass);
    Optional<Angle> total = total(job, placement, event);
    Optional<Verdict> verdict =
        event.direction() == Direction.CCW
            ? Optional.empty()
            : placement.stage().flatMap(s -> verdict(placement.reason(), s, event, total));
    Effect effect = effect(job, placement, event, objections, verdict);
    List<String> undoes =
        loosens(placement, event)
            ? Undo.of(job, placement.fastener().getAsInt()).stream().map(Stage::key).toList()
            : List.of();
    Optional<AngleBand> window =
        placement.reason() == Reason.HIT_AGAIN ? Optional.empty() : pass.flatMap(Pass::angle);
    Judged judged =
        new Judged(
            placement.fastener().stream().mapToObj(job.plan()::name).findFirst(),
            pass.map(Pass::name),
            placement.reason(),
            placement.alternatives(),
            objections,
            verdict,
            pass.map(p -> p.band().low().toString()),
            pass.map(p -> p.band().high().toString()),
            window.map(w -> w.low().toString()),
            window.map(w -> w.high().toString()),
            total.filter(
                t -> verdict.equals(Optional.of(Verdict.UNDER_TORQUE)) || pulledBefore(t, event)),
            effect,
            undoes,
            "");
    return Wording.told(judged, event);
  }

  /**
   * Degrees over all pulls of the pass. A pull that goes on after an under-torque turns only the
   * rest of the angle, so the window holds for the sum. A pull that reached its band does not count
   * into it: hitting a tight fastener again and again must never add up to a fresh one.
   */
  private static Optional<Angle> total(JobState job, Placement placement, TorqueEvent event) {
    if (event.direction() == Direction.CCW
        || placement.fastener().isEmpty()
        || placement.reason() == Reason.HIT_AGAIN) {
      return Optional.empty();
    }
    BigDecimal before = job.condition(placement.fastener().getAsInt()).turned();
    return event
        .angle()
        .map(a -> a.degrees().value().add(before))
        .map(sum -> Angle.of(sum.toPlainString()));
  }

  private static Optional<Verdict> verdict(
      Reason reason, Stage stage, TorqueEvent event, Optional<Angle> total) {
    Side side = pass(stage).band().side(event.torque());
    if (reason == Reason.NOT_DUE_YET) {
      return aboveEveryPass(stage, event) ? Optional.of(Verdict.OVER_TORQUE) : Optional.empty();
    }
    if (side != Side.INSIDE) {
      return Optional.of(side == Side.BELOW ? Verdict.UNDER_TORQUE : Verdict.OVER_TORQUE);
    }
    if (total.isEmpty() || pass(stage).angle().isEmpty()) {
      return Optional.of(Verdict.IN_BAND);
    }
    return Optional.of(
        switch (pass(stage).angle().get().side(total.get())) {
          case BELOW -> Verdict.ANGLE_LOW;
          case INSIDE -> Verdict.IN_BAND;
          case ABOVE -> Verdict.ANGLE_HIGH;
        });
  }

  private static Effect effect(
      JobState job,
      Placement placement,
      TorqueEvent event,
      List<Objection> objections,
      Optional<Verdict> verdict) {
    if (event.direction() == Direction.CCW) {
      if (loosens(placement, event)) {
        return Spent.byLoosening(job, placement) ? Effect.NONCONFORMING : Effect.LOOSENED;
      }
      return placement.reason() == Reason.LOOSENED_WHICH && !placement.alternatives().isEmpty()
          ? Effect.ASKS
          : Effect.NONE;
    }
    if (placement.reason() == Reason.SEVERAL_POSSIBLE) {
      return Effect.ASKS;
    }
    if (verdict.isEmpty()) {
      return Effect.NONE;
    }
    boolean again = placement.reason() == Reason.HIT_AGAIN;
    return switch (verdict.get()) {
      case OVER_TORQUE, ANGLE_HIGH -> Effect.NONCONFORMING;
      case UNDER_TORQUE, ANGLE_LOW, UNDECIDED -> {
        if (waits(placement)) {
          yield Effect.NONE;
        }
        yield Spent.byTrying(job, placement) ? Effect.NONCONFORMING : Effect.AGAIN;
      }
      case IN_BAND -> {
        if (waits(placement) || (again && !objections.isEmpty())) {
          yield Effect.NONE;
        }
        if (again) {
          yield Effect.RECHECKED;
        }
        yield objections.isEmpty() ? Effect.CREDITED : Effect.AGAIN;
      }
    };
  }

  private static boolean loosens(Placement placement, TorqueEvent event) {
    return event.direction() == Direction.CCW && placement.fastener().isPresent();
  }

  private static boolean pulledBefore(Angle total, TorqueEvent event) {
    return total.compareTo(event.angle().orElseThrow()) != 0;
  }

  private static boolean waits(Placement placement) {
    return placement.reason() == Reason.WAITS_FOR_DISPOSITION;
  }

  /** A fastener hit before its turn is damaged only beyond what any of its passes allows. */
  private static boolean aboveEveryPass(Stage stage, TorqueEvent event) {
    return ((TightenStep) stage.step())
        .passes().stream().allMatch(p -> p.band().side(event.torque()) == Side.ABOVE);
  }

  private static Pass pass(Stage stage) {
    return ((TightenStep) stage.step()).passes().get(stage.pass());
  }
}
