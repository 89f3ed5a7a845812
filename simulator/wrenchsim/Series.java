package wrenchsim;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import wrenchsim.joint.Joint;
import wrenchsim.joint.JointSpec;
import wrenchsim.shop.Chance;
import wrenchsim.shop.Pace;
import wrenchsim.shop.ShopClock;
import wrenchsim.truth.Happening;
import wrenchsim.truth.Truth;
import wrenchsim.wrench.Sender;
import wrenchsim.wrench.Wrench;

/** A row of loose bolts, each tightened once by one wrench, whatever anybody expects. */
final class Series {
  private static final double TOLERANCE = 0.1;
  private static final double AIM_DEVIATION = 0.02;

  @Spec(Spec.Target.MIXEE)
  private CommandSpec spec;

  @Option(names = "--count", paramLabel = "N", required = true, description = "How many events.")
  long count;

  @Option(
      names = "--rate",
      paramLabel = "R",
      defaultValue = "0",
      description = "Events a second; 0: as fast as they go (default: ${DEFAULT-VALUE}).")
  private double rate;

  @Option(
      names = "--first-event",
      paramLabel = "K",
      defaultValue = "1",
      description = "The number of the first event (default: ${DEFAULT-VALUE}).")
  long first;

  @Option(
      names = "--torque",
      paramLabel = "NM",
      defaultValue = "45",
      description = "The torque to aim at, N.m (default: ${DEFAULT-VALUE}).")
  private double torque;

  /** What has to be so before the next event goes out. */
  interface Gate {
    void await() throws IOException;
  }

  void refuseWrong(WrenchOption wrench) {
    if (wrench.via().line().isPresent()) {
      throw new ParameterException(
          spec.commandLine(),
          "via belongs to the wrenches of 'shop'; burst speaks MQTT, and line takes --port or --virtual");
    }
    if (wrench.spec().life().store().isPresent()) {
      throw new ParameterException(
          spec.commandLine(),
          "store belongs to the wrenches of 'shop'; burst and line send each reading at once");
    }
    if (count < 1 || rate < 0 || first < 0 || !(torque > 0 && torque <= 100_000)) {
      throw new ParameterException(
          spec.commandLine(),
          "a series needs --count 1 or more, --rate 0 or more, --first-event 0 or more and --torque above 0 and at most 100000, but got %d, %s, %d and %s"
              .formatted(count, rate, first, torque));
    }
  }

  long last() {
    return first + count - 1;
  }

  void send(WrenchOption option, RunOptions run, Truth truth, Sender sender, Gate gate)
      throws IOException {
    ShopClock clock = new ShopClock(run.clockStart, Pace.FAST);
    Wrench wrench =
        new Wrench(
            option.numberedFrom(first),
            clock.start(),
            Chance.of(run.seed, "wrench " + option.spec().serial()));
    Random chance = Chance.of(run.seed, "series");
    JointSpec spec =
        new JointSpec(
            torque, torque * (1 - TOLERANCE), torque * (1 + TOLERANCE), JointSpec.HARD, 0.05);
    long periodNanos = rate == 0 ? 0 : Math.round(1e9 / rate);
    long began = System.nanoTime();
    for (long i = 0; i < count; i++) {
      awaitTurn(began + i * periodNanos, periodNanos);
      gate.await();
      double gaussian = Math.max(-3, Math.min(3, chance.nextGaussian()));
      double aimNm = torque * (1 + AIM_DEVIATION * gaussian);
      Wrench.Measured measured =
          wrench.tighten(new Joint(spec, chance), aimNm, clock.now(), Optional.empty());
      truth.tell(
          new Happening(
              clock.now(),
              Happening.Act.TIGHTEN,
              Happening.Work.NONE,
              measured.turn(),
              measured.reading(),
              Optional.empty(),
              false));
      sender.send(measured.reading());
      clock.spend(Duration.ofNanos(Math.max(periodNanos, 1_000_000)));
    }
  }

  /** Keeps to the timetable, not to gaps, so that a slow moment is made up for. */
  private static void awaitTurn(long dueNanos, long periodNanos) {
    long left = dueNanos - System.nanoTime();
    if (periodNanos > 0 && left > 0) {
      try {
        TimeUnit.NANOSECONDS.sleep(left);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        throw new IllegalStateException("interrupted between two events", e);
      }
    }
  }

  /** Seconds to the millisecond. */
  static String digits(double seconds) {
    return BigDecimal.valueOf(seconds).setScale(3, RoundingMode.HALF_UP).toPlainString();
  }
}
