package witnessmark.recall;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import witnessmark.desk.AbandonJob;
import witnessmark.desk.CalibrateWrench;
import witnessmark.desk.Dispose;
import witnessmark.desk.Tried;
import witnessmark.entry.Disposition;
import witnessmark.pipeline.Bench;
import witnessmark.torque.Digits;
import witnessmark.torque.Direction;
import witnessmark.torque.Torque;

/** A shop's days with two wrenches, of which TW-1 goes to the laboratory now and then. */
public final class Histories {
  private static final String PROCEDURE =
      Bench.group(3, "order = \"any\"", "criticality = \"danger\"")
          + "[[step]]\nid = \"b\"\nkind = \"tighten\"\ntitle = \"b\"\nfasteners = 2\norder = \"any\"\n"
          + "torque = \"24 lbf.ft\"\ntolerance = \"6 %\"\n"
          + "[[step]]\nid = \"c\"\nkind = \"tighten\"\ntitle = \"c\"\nfasteners = 2\norder = \"any\"\n"
          + "criticality = \"function\"\n"
          + "[[step.pass]]\nname = \"snug\"\ntorque = \"40 N.m\"\ntolerance = \"10 %\"\n"
          + "[[step.pass]]\nname = \"final\"\ntorque = \"90 N.m\"\ntolerance = \"3 N.m\"\n";

  private static final List<String> FASTENERS =
      List.of("a/1", "a/2", "a/3", "b/1", "b/2", "c/1", "c/2");

  private final Random random;
  private final Bench bench = Bench.without(PROCEDURE);

  private Histories(Random random) {
    this.random = random;
  }

  public static Bench of(Random random) {
    Histories history = new Histories(random);
    history.run();
    return history.bench;
  }

  private void run() {
    int units = 1 + random.nextInt(4);
    for (int unit = 1; unit <= units; unit++) {
      bench.open("ATR-26-000" + unit);
      int acts = 10 + random.nextInt(40);
      for (int i = 0; i < acts; i++) {
        act();
      }
      bench.person(new AbandonJob(bench.jobName(), Optional.empty(), "end of the story"));
      bench.rest(random.nextInt(40_000));
      if (unit < units && random.nextInt(4) == 0) {
        calibrate();
      }
    }
    bench.rest(86_400);
    calibrate();
  }

  private void act() {
    String fastener = FASTENERS.get(random.nextInt(FASTENERS.size()));
    String wrench = random.nextInt(3) == 0 ? "TW-2" : "TW-1";
    int chance = random.nextInt(20);
    if (chance == 0) {
      bench.take(bench.event("TW-1", "30 N.m", "", Direction.CCW, fastener));
    } else if (chance == 1) {
      bench.rest(random.nextInt(20_000));
    } else if (chance == 2) {
      bench.hit(wrench, torque(fastener), "", "");
    } else {
      bench.hit(wrench, torque(fastener), "", fastener);
    }
    dispose(fastener);
  }

  private void dispose(String fastener) {
    int number = bench.job().plan().fastener(fastener).orElseThrow();
    if (bench.job().condition(number).nonconformity().isPresent() && random.nextBoolean()) {
      Disposition chosen = random.nextBoolean() ? Disposition.REPLACE : Disposition.REWORK;
      try {
        bench.person(new Dispose(bench.jobName(), fastener, chosen, "badge-07", "seen"));
      } catch (witnessmark.desk.Declined no) {
        return; // not every choice is open for every fastener
      }
    }
  }

  private String torque(String fastener) {
    double aim = fastener.startsWith("a") ? 50 : fastener.startsWith("b") ? 32.54 : 90;
    if (fastener.startsWith("c") && random.nextInt(3) == 0) {
      aim = 40;
    }
    return decimal(aim * (1 + 0.04 * random.nextGaussian())) + " N.m";
  }

  private void calibrate() {
    bench.person(
        new CalibrateWrench(
            "TW-1",
            "C-26-" + bench.size(),
            "calibration room",
            bench.now().truncatedTo(ChronoUnit.DAYS),
            Optional.of(Instant.parse("2028-01-01T00:00:00Z")),
            Optional.empty(),
            0,
            new Digits("1.0"),
            tried(6, 1 + random.nextInt(4)),
            tried(3, 3),
            Optional.empty()));
  }

  /** Points with deviations of a few per cent at most. */
  private List<Tried> tried(double most, int points) {
    List<Tried> tried = new ArrayList<>();
    List<Integer> at = new ArrayList<>(List.of(20, 60, 100, 35));
    if (points < 3) {
      Collections.shuffle(at, random);
    }
    double bias = (random.nextDouble() * 2 - 1) * most;
    for (int i = 0; i < points; i++) {
      List<Torque> reference = new ArrayList<>();
      for (int j = 0; j < 5; j++) {
        double percent = bias * 0.8 + random.nextDouble() * most * 0.2;
        reference.add(Torque.parse(decimal(at.get(i) / (1 + percent / 100)) + " N.m"));
      }
      tried.add(new Tried(Torque.parse(at.get(i) + " N.m"), reference));
    }
    return tried;
  }

  private static String decimal(double value) {
    return String.format(java.util.Locale.ROOT, "%.2f", value);
  }
}
