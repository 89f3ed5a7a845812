package wrenchsim.shop;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import wrenchsim.joint.Joint;
import wrenchsim.shop.Mistake.Kind;
import wrenchsim.truth.Happening;
import wrenchsim.truth.Happening.Act;
import wrenchsim.truth.Happening.Work;
import wrenchsim.wire.Expected;
import wrenchsim.wrench.Reading;
import wrenchsim.wrench.Wrench;
import wrenchsim.wrench.Wrench.Measured;

/** What hands do with a wrench on the parts: turn, and let the wrench send. */
final class Hands {
  // How well a hand stops at a number on a display, and how long it takes from bolt to bolt and to
  // feel whether one is loose: common practice, no source.
  private static final double AIM_DEVIATION = 0.02;
  private static final double BAND_SHARE = 0.125;
  private static final double UNDER = 0.75;
  private static final double OVER = 1.15;
  private static final Duration LEAST_WORK = Duration.ofSeconds(3);
  private static final double MORE_WORK_MILLIS = 5_000;
  private static final Duration FEELING = Duration.ofSeconds(1);

  private final Parts parts;
  private final ShopClock clock;
  private final Random chance;
  private final Unheard unheard;

  Hands(Parts parts, ShopClock clock, Random chance, Unheard unheard) {
    this.parts = parts;
    this.clock = clock;
    this.chance = chance;
    this.unheard = unheard;
  }

  /** Whether a fastener is held, so that it can be undone. */
  boolean isHeld(Task task, String fastener) {
    return parts.joint(task.heard(), fastener, task.due()).isHeld();
  }

  /** Feels by hand whether a fastener is loose. */
  boolean feelsSlack(Task task, Expected fastener) {
    clock.spend(FEELING);
    return parts.joint(task.heard(), fastener.fastener(), fastener).isSlack();
  }

  /** Turns a fastener as planned, its label scanned before where that is the habit. */
  Deed turn(Plan plan, boolean scans) {
    Joint joint = parts.joint(plan.task().heard(), plan.place(), plan.like());
    Radio radio = plan.task().tool().radio();
    Measured measured = measure(plan, joint);
    boolean stored = radio.isOutOfRange();
    Happening happening =
        new Happening(
            clock.now(),
            plan.act(),
            work(plan),
            measured.turn(),
            measured.reading(),
            plan.mistake().map(m -> m.kind().word()),
            stored);
    List<Message> scanned =
        scans && !stored && plan.act() == Act.TIGHTEN
            ? List.of(new Message.Scan(plan.place(), measured.reading().operator()))
            : List.of();
    int copies = plan.is(Kind.REDELIVER) ? 2 : 1;
    return deed(List.of(happening), scanned, radio.send(happening, copies));
  }

  /** Brings a wrench back into range. */
  Deed comeBack(Tool tool) {
    return deed(List.of(), List.of(), tool.radio().comeBack());
  }

  private Measured measure(Plan plan, Joint joint) {
    Wrench wrench = plan.task().tool().wrench();
    Optional<String> place = Optional.of(plan.place());
    if (plan.act() == Act.LOOSEN) {
      work();
      return wrench.loosen(joint, clock.now(), place);
    }
    double aimNm = aimNm(plan);
    work();
    return plan.is(Kind.CROSS)
        ? wrench.bind(joint, aimNm, clock.now(), place)
        : wrench.tighten(joint, aimNm, clock.now(), place);
  }

  private Deed deed(List<Happening> done, List<Message> scanned, List<Radio.Burst> bursts) {
    List<Happening> truth = new ArrayList<>(done);
    List<Message> messages = new ArrayList<>(scanned);
    List<Reading> awaited = new ArrayList<>();
    for (Radio.Burst burst : bursts) {
      List<Reading> readings = burst.happenings().stream().map(Happening::reading).toList();
      messages.add(new Message.Torque(readings, burst.stored()));
      burst.happenings().forEach(unheard::sent);
      if (!burst.again()) {
        readings.stream().distinct().forEach(awaited::add);
        continue;
      }
      for (Happening happening : burst.happenings()) {
        Optional<String> purpose = burst.stored() ? Optional.empty() : happening.mistake();
        truth.add(happening.again(clock.now(), purpose));
      }
    }
    return new Deed(truth, messages, awaited);
  }

  private static Work work(Plan plan) {
    return new Work(
        plan.task().heard().job(),
        plan.task().heard().unit(),
        Optional.of(plan.place()),
        Optional.of(plan.task().due().fastener()),
        Optional.of(plan.task().due().pass()));
  }

  private double aimNm(Plan plan) {
    Expected band = plan.like();
    double gaussian = Math.max(-3, Math.min(3, chance.nextGaussian()));
    double deviationNm =
        Math.min(AIM_DEVIATION * band.targetNm(), BAND_SHARE * (band.highNm() - band.lowNm()));
    if (plan.is(Kind.UNDER)) {
      return UNDER * band.lowNm() + gaussian * deviationNm;
    }
    if (plan.is(Kind.OVER)) {
      return OVER * band.highNm() + gaussian * deviationNm;
    }
    // A hand that sees the display stays inside the band, however narrow or lopsided.
    double aimNm = band.targetNm() + gaussian * deviationNm;
    return Math.max(band.lowNm(), Math.min(band.highNm(), aimNm));
  }

  private void work() {
    clock.spend(LEAST_WORK.plusMillis(Math.round(MORE_WORK_MILLIS * chance.nextDouble())));
  }
}
