package witnessmark.match;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import witnessmark.job.Condition;
import witnessmark.job.JobState;
import witnessmark.job.Pull;
import witnessmark.procedure.Pass;
import witnessmark.procedure.Stage;
import witnessmark.procedure.Telling;
import witnessmark.procedure.TightenStep;
import witnessmark.torque.AngleBand;
import witnessmark.torque.Direction;
import witnessmark.torque.Side;
import witnessmark.torque.TorqueEvent;

/** What speaks for and against one fastener, in the words of the evidence. */
final class Testimony {
  private final JobState job;
  private final TorqueEvent event;
  private final int fastener;
  private final Stage stage;
  private final Condition condition;
  private final Pass pass;
  private final TightenStep step;
  private final List<String> supports = new ArrayList<>();
  private final List<String> against = new ArrayList<>();

  private Testimony(JobState job, TorqueEvent event, int fastener, Stage stage) {
    this.job = job;
    this.event = event;
    this.fastener = fastener;
    this.stage = stage;
    this.condition = job.condition(fastener);
    this.pass = Bands.pass(stage);
    this.step = Bands.step(stage);
  }

  static Weighed of(JobState job, TorqueEvent event, int fastener, Stage stage, String role) {
    Testimony said = new Testimony(job, event, fastener, stage);
    boolean tight = role.equals("tight");
    if (event.direction() == Direction.CCW) {
      said.held();
    } else if (tight) {
      said.held();
      said.torque();
      said.turnsAsTight();
      said.time();
    } else {
      said.due(role);
      said.torque();
      said.turnsAsFresh();
    }
    said.breakaway(tight);
    said.wrench();
    return new Weighed(
        job.plan().name(fastener), said.pass.name(), role, said.supports, said.against);
  }

  private void due(String role) {
    if (role.equals("named")) {
      supports.add("it is named");
    }
    List<Integer> next = job.next(stage);
    boolean open = job.openStages().contains(stage) && next.contains(fastener);
    say(
        open,
        next.size() > 1
            ? "it is one of " + next.size() + " still to be done in its group, in any order"
            : "it is next in its group",
        "it is not due");
  }

  private void held() {
    condition
        .pull()
        .ifPresent(
            p ->
                supports.add(
                    "it was pulled "
                        + p.wrench().map(w -> "by " + w + " ").orElse("")
                        + "in entry "
                        + p.entry()
                        + " and is held at "
                        + plain(p.held())
                        + " N.m"));
  }

  private void torque() {
    Side side = pass.band().side(event.torque());
    String band = "its band of " + pass.band();
    say(
        side == Side.INSIDE,
        event.torque() + " is in " + band,
        event.torque() + " is " + (side == Side.BELOW ? "below " : "above ") + band);
  }

  private void turnsAsTight() {
    if (event.angle().isPresent() && step.care().telling().recheckAngle().signum() > 0) {
      BigDecimal most = TightTurn.most(job, stage, condition.pull().orElseThrow().held(), event);
      String told =
          "it turned "
              + event.angle().get()
              + " degrees: a tight one turns "
              + plain(most)
              + " at most";
      say(degrees().compareTo(most) <= 0, told, told);
    }
  }

  private void turnsAsFresh() {
    if (event.angle().isEmpty()) {
      return;
    }
    String turned = "it turned " + event.angle().get() + " degrees: ";
    BigDecimal most = step.care().telling().recheckAngle();
    if (pass.check()) {
      say(
          degrees().compareTo(most) <= 0,
          turned + "tight, as it should be",
          turned + "too far for a tight one");
    } else if (condition.turned().signum() > 0) {
      say(
          !ByAngle.breaksOff(condition, stage, event),
          turned + "the rest after pulls of " + plain(condition.turned()) + " degrees",
          turned
              + "too little for the rest after pulls of "
              + plain(condition.turned())
              + " degrees");
    } else if (pass.angle().isPresent()) {
      AngleBand window = pass.angle().get();
      say(
          window.side(event.angle().get()) == Side.INSIDE,
          turned + "its window is " + window,
          turned + "its window is " + window);
    } else {
      learnt(turned);
    }
    if (Held.inPass(condition, stage.pass(), event)) {
      supports.add("it is held tight itself, so that a small angle says nothing");
    }
  }

  private void learnt(String turned) {
    Optional<LearntTurn> learnt = LearntTurn.of(job, stage);
    boolean small = degrees().compareTo(step.care().telling().recheckAngle()) <= 0;
    if (learnt.isEmpty()) {
      say(
          !small,
          turned + "more than a tight one",
          turned + "no more than a tight one, and its group has shown no turn yet");
      return;
    }
    if (!small && Bands.side(stage, event.torque()) == Side.BELOW) {
      supports.add(turned + "more than a tight one, and it was let go below its band");
      return;
    }
    String limit =
        "a fresh one of its group hardly ever turns less than "
            + learnt.get().limit()
            + ", learnt from "
            + learnt.get().count();
    say(!learnt.get().below(degrees()), turned + limit, turned + limit);
  }

  private void time() {
    Telling telling = step.care().telling();
    Optional<Pull> pull = condition.pull().filter(p -> p.by(event.wrench()));
    if (telling.secondsBetween().isEmpty()
        || event.time().isEmpty()
        || pull.flatMap(Pull::time).isEmpty()) {
      return;
    }
    BigDecimal gap =
        NextOrAgain.seconds(Duration.between(pull.get().time().get(), event.time().get()));
    String told =
        plain(gap)
            + " s after its pull: the next one takes "
            + plain(telling.secondsBetween().get())
            + " s at least";
    say(gap.compareTo(telling.secondsBetween().get()) < 0, told, told);
  }

  private void breakaway(boolean tight) {
    Sign sign =
        event.direction() == Direction.CW
            ? ByBreakaway.of(tight ? Condition.LOOSE : condition, stage, event)
            : Sign.SILENT;
    if (sign != Sign.SILENT) {
      String told =
          "it began to turn at "
              + event.breakaway().orElseThrow()
              + ": as "
              + (sign == Sign.TIGHT ? "a tight" : "a loose")
              + " one does";
      say((sign == Sign.TIGHT) == tight, told, told);
    }
  }

  private void wrench() {
    if (!step.wrenches().isEmpty()) {
      say(
          Bands.allows(step, event.wrench()),
          event.wrench() + " may be used on it",
          event.wrench() + " may not be used on it");
    }
  }

  private BigDecimal degrees() {
    return event.angle().orElseThrow().degrees().value();
  }

  private void say(boolean supporting, String yes, String no) {
    (supporting ? supports : against).add(supporting ? yes : no);
  }

  private static String plain(BigDecimal value) {
    BigDecimal rounded = value.scale() > 2 ? value.setScale(2, RoundingMode.HALF_UP) : value;
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }
}
