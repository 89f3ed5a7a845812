package witnessmark.judge;

import java.math.BigDecimal;
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
import witnessmark.torque.Rounded;
import witnessmark.torque.Side;
import witnessmark.torque.Torque;
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
   * @param objections what speaks against relying on it
   */
  public static Judged of(
      JobState job,
      Placement placement,
      TorqueEvent event,
      Optional<Wrench> wrench,
      List<Objection> objections) {
    Optional<Ruling> ruling =
        event.direction() == Direction.CCW
            ? Optional.empty()
            : placement.stage().flatMap(s -> ruling(placement.reason(), s, event.torque(), wrench));
    Optional<Pass> pass = placement.stage().map(Judge::pass);
    Optional<Angle> total = total(job, placement, event);
    Optional<Verdict> verdict = ruling.map(r -> verdict(r, placement.stage().orElseThrow(), total));
    boolean maybeTooTight = ruling.filter(r -> r.side() == Side.ABOVE).isPresent();
    Effect effect = effect(job, placement, event, objections, verdict, maybeTooTight);
    List<String> undoes =
        loosens(placement, event)
            ? Undo.of(job, placement.fastener().getAsInt()).stream().map(Stage::key).toList()
            : List.of();
    Optional<AngleBand> window =
        placement.reason().again() ? Optional.empty() : placement.stage().flatMap(Judge::window);
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
            total.filter(t -> placement.counts() && (goesOn(verdict) || pulledBefore(t, event))),
            placement.stage().flatMap(s -> atFastener(s, event)),
            ruling.map(Ruling::rule),
            ruling.flatMap(Ruling::factor),
            ruling.flatMap(Ruling::guard),
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
        || placement.reason().again()) {
      return Optional.empty();
    }
    if (!placement.counts() || pass(placement.stage().orElseThrow()).check()) {
      return event.angle(); // small moves of what is tight add up to nothing
    }
    BigDecimal before = job.condition(placement.fastener().getAsInt()).turned();
    return before.signum() == 0 ? event.angle() : event.angle().map(a -> a.plus(before));
  }

  /**
   * The decision on the torque. A fastener hit before its turn is decided only where none of its
   * passes allows the torque: only beyond that it is damaged, or may be.
   */
  private static Optional<Ruling> ruling(
      Reason reason, Stage stage, Torque reading, Optional<Wrench> wrench) {
    TightenStep step = (TightenStep) stage.step();
    Ruling own = Ruling.of(pass(stage), step.care().tool(), reading, wrench);
    if (reason != Reason.NOT_DUE_YET) {
      return Optional.of(own);
    }
    List<Ruling> all =
        step.passes().stream().map(p -> Ruling.of(p, step.care().tool(), reading, wrench)).toList();
    if (all.stream().anyMatch(r -> r.side() != Side.ABOVE)) {
      return Optional.empty();
    }
    return all.stream().filter(r -> !r.decided()).findFirst().or(() -> Optional.of(own));
  }

  private static Verdict verdict(Ruling ruling, Stage stage, Optional<Angle> total) {
    Optional<AngleBand> window = window(stage);
    boolean moved =
        pass(stage).check()
            && total.isPresent()
            && window.filter(w -> w.side(total.get()) == Side.ABOVE).isPresent();
    if (moved && ruling.side() == Side.BELOW) {
      return Verdict.ANGLE_HIGH;
    }
    if (ruling.side() != Side.INSIDE || total.isEmpty() || window.isEmpty()) {
      return ruling.verdict();
    }
    return switch (window.get().side(total.get())) {
      case BELOW -> asked(stage) ? Verdict.ANGLE_LOW : Verdict.IN_BAND;
      case INSIDE -> Verdict.IN_BAND;
      case ABOVE -> Verdict.ANGLE_HIGH;
    };
  }

  /** The torque at the fastener for the record, where an adapter makes it another. */
  private static Optional<String> atFastener(Stage stage, TorqueEvent event) {
    return ((TightenStep) stage.step())
        .care()
        .tool()
        .adapter()
        .map(a -> a.atFastener(event.torque().digits().value(), Rounded.RECORD))
        .map(v -> Rounded.text(v, Rounded.RECORD) + " " + event.torque().unit());
  }

  private static Effect effect(
      JobState job,
      Placement placement,
      TorqueEvent event,
      List<Objection> objections,
      Optional<Verdict> verdict,
      boolean maybeTooTight) {
    if (event.direction() == Direction.CCW) {
      if (loosens(placement, event)) {
        return Spent.byLoosening(job, placement) ? Effect.NONCONFORMING : Effect.LOOSENED;
      }
      return placement.reason() == Reason.LOOSENED_WHICH && !placement.alternatives().isEmpty()
          ? Effect.ASKS
          : Effect.NONE;
    }
    if (placement.reason().asks()) {
      return Effect.ASKS;
    }
    if (verdict.isEmpty()) {
      return Effect.NONE;
    }
    boolean again = placement.reason().again();
    return switch (verdict.get()) {
      case OVER_TORQUE, ANGLE_HIGH -> Effect.NONCONFORMING;
      case UNDECIDED -> maybeTooTight ? Effect.NONCONFORMING : again(job, placement);
      case UNDER_TORQUE, ANGLE_LOW -> again(job, placement);
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

  private static Effect again(JobState job, Placement placement) {
    if (waits(placement)) {
      return Effect.NONE;
    }
    return Spent.byTrying(job, placement) ? Effect.NONCONFORMING : Effect.AGAIN;
  }

  /** Whether the next pull goes on from where this one ended. */
  private static boolean goesOn(Optional<Verdict> verdict) {
    return verdict.filter(v -> v == Verdict.UNDER_TORQUE || v == Verdict.UNDECIDED).isPresent();
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

  /**
   * The window for the angle: what the pass asks for, else in a pass that checks as far as a tight
   * fastener turns. One that turned further was counted as tight and was not: somebody must look.
   */
  private static Optional<AngleBand> window(Stage stage) {
    BigDecimal tight = ((TightenStep) stage.step()).care().telling().recheckAngle();
    return pass(stage).check() && !asked(stage) && tight.signum() > 0
        ? Optional.of(new AngleBand(Angle.of("0"), Angle.of(tight.toPlainString())))
        : pass(stage).angle();
  }

  private static boolean asked(Stage stage) {
    return pass(stage).angle().isPresent();
  }

  private static Pass pass(Stage stage) {
    return ((TightenStep) stage.step()).passes().get(stage.pass());
  }
}
