package wrenchsim.shop;

import java.io.IOException;
import java.time.Duration;
import java.util.Optional;
import java.util.Random;
import wrenchsim.joint.Joint;
import wrenchsim.truth.Happening;
import wrenchsim.truth.Happening.Act;
import wrenchsim.truth.Happening.Work;
import wrenchsim.truth.Truth;
import wrenchsim.wire.Expected;
import wrenchsim.wrench.Reading;
import wrenchsim.wrench.Wrench.Measured;

/**
 * What hands do with a wrench on the parts: turn, tell the truth of it, and let the wrench send.
 */
final class Hands {
  // How well a hand stops at a number on a display, and how long it takes from bolt to bolt:
  // common practice, no source.
  private static final double AIM_DEVIATION = 0.02;
  private static final double BAND_SHARE = 0.125;
  private static final double UNDER = 0.75;
  private static final double OVER = 1.15;
  private static final Duration LEAST_WORK = Duration.ofSeconds(3);
  private static final double MORE_WORK_MILLIS = 5_000;

  private final Parts parts;
  private final ShopClock clock;
  private final Bench bench;
  private final Truth truth;
  private final Random chance;

  Hands(Parts parts, ShopClock clock, Bench bench, Truth truth, Random chance) {
    this.parts = parts;
    this.clock = clock;
    this.bench = bench;
    this.truth = truth;
    this.chance = chance;
  }

  /** Whether a fastener is held, so that it can be undone. */
  boolean isHeld(Task task, String fastener) {
    return parts.joint(task.heard(), fastener, task.due()).isHeld();
  }

  /** Tightens one fastener as the task asks, or off the band when the mistake is of that kind. */
  Reading tighten(Task task, String fastener, Optional<Mistake> mistake) throws IOException {
    Joint joint = parts.joint(task.heard(), fastener, task.due());
    double aimNm = aimNm(task.due(), mistake);
    work();
    Measured measured =
        task.tool().wrench().tighten(joint, aimNm, clock.now(), Optional.of(fastener));
    return send(task, fastener, Act.TIGHTEN, measured, mistake);
  }

  /** Undoes one fastener that is held. */
  Reading loosen(Task task, String fastener, Optional<Mistake> mistake) throws IOException {
    Joint joint = parts.joint(task.heard(), fastener, task.due());
    work();
    Measured measured = task.tool().wrench().loosen(joint, clock.now(), Optional.of(fastener));
    return send(task, fastener, Act.LOOSEN, measured, mistake);
  }

  private Reading send(
      Task task, String fastener, Act act, Measured measured, Optional<Mistake> mistake)
      throws IOException {
    Reading reading = measured.reading();
    bench.aboutToSend(reading);
    tell(task, fastener, act, measured, mistake);
    task.tool().sender().send(reading);
    if (mistake.isPresent() && mistake.get().kind() == Mistake.Kind.REDELIVER) {
      tell(task, fastener, Act.REDELIVER, measured, mistake);
      task.tool().sender().send(reading);
    }
    return reading;
  }

  private void tell(
      Task task, String fastener, Act act, Measured measured, Optional<Mistake> mistake)
      throws IOException {
    Work work =
        new Work(
            task.heard().job(),
            task.heard().unit(),
            Optional.of(fastener),
            Optional.of(task.due().fastener()),
            Optional.of(task.due().pass()));
    truth.tell(
        new Happening(
            clock.now(),
            act,
            work,
            measured.turn(),
            measured.reading(),
            mistake.map(m -> m.kind().word())));
  }

  private double aimNm(Expected due, Optional<Mistake> mistake) {
    double gaussian = Math.max(-3, Math.min(3, chance.nextGaussian()));
    double deviationNm =
        Math.min(AIM_DEVIATION * due.targetNm(), BAND_SHARE * (due.highNm() - due.lowNm()));
    Optional<Mistake.Kind> kind = mistake.map(Mistake::kind);
    if (kind.equals(Optional.of(Mistake.Kind.UNDER))) {
      return UNDER * due.lowNm() + gaussian * deviationNm;
    }
    if (kind.equals(Optional.of(Mistake.Kind.OVER))) {
      return OVER * due.highNm() + gaussian * deviationNm;
    }
    // A hand that sees the display stays inside the band, however narrow or lopsided.
    double aimNm = due.targetNm() + gaussian * deviationNm;
    return Math.max(due.lowNm(), Math.min(due.highNm(), aimNm));
  }

  private void work() {
    clock.spend(LEAST_WORK.plusMillis(Math.round(MORE_WORK_MILLIS * chance.nextDouble())));
  }
}
