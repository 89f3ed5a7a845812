package witnessmark.trial;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import witnessmark.trial.Scene.Telling;
import wrenchsim.joint.Rehit;
import wrenchsim.shop.Habits;
import wrenchsim.shop.JointKind;
import wrenchsim.shop.Mistake.Kind;
import wrenchsim.wrench.Gauge;
import wrenchsim.wrench.Life;
import wrenchsim.wrench.Restart;
import wrenchsim.wrench.Store;
import wrenchsim.wrench.Unit;
import wrenchsim.wrench.WrenchClock;
import wrenchsim.wrench.WrenchSpec;

/** The kinds of work of the trial. All figures are invented, to cover what a shop may meet. */
final class Scenes {
  private static final Map<Kind, Double> EVERYTHING =
      Map.of(
          Kind.UNDER, 0.01,
          Kind.OVER, 0.005,
          Kind.REDELIVER, 0.01,
          Kind.SKIP, 0.01,
          Kind.DOUBLE, 0.01,
          Kind.LOOSEN, 0.003,
          Kind.WRONG, 0.003,
          Kind.CROSS, 0.002);
  private static final Map<Kind, Double> OTHER_WRENCH =
      Map.of(Kind.UNDER, 0.01, Kind.DOUBLE, 0.01, Kind.WRONGTOOL, 0.01);
  private static final JointKind HARD = new JointKind(Optional.of(30.0), 0.05, Rehit.USUAL);
  private static final JointKind SOFT = new JointKind(Optional.of(360.0), 0.08, Rehit.USUAL);

  /** The two distributions touch: fresh 9.5 degrees ± 1.2, hit again 2.5 ± 0.9. */
  private static final JointKind OVERLAPPING =
      new JointKind(Optional.of(9.5), 0.126, new Rehit(2.5, 0.9));

  private Scenes() {}

  static List<Scene> all() {
    return List.of(
        scene("angle, no windows, hard joints", 20, procedure("", ""), angle(), HARD, Habits.PLAIN),
        scene(
            "angle, no windows, soft joints, fasteners picked at random",
            15,
            procedure("", ""),
            angle(),
            SOFT,
            new Habits(true, false, false)),
        scene(
            "angle, windows of 22 to 38 degrees, hard joints",
            15,
            procedure("angle-min = \"22\"\nangle-max = \"38\"\n", ""),
            angle(),
            HARD,
            Habits.PLAIN),
        scene(
            "angle, readings stored and delivered late, counters that begin anew, clocks that drift",
            15,
            procedure("", ""),
            stored(),
            HARD,
            Habits.PLAIN),
        scene(
            "torque only, every position scanned",
            10,
            procedure("", ""),
            List.of(wrench("TW-1", false, Life.EVEN, WrenchClock.RIGHT)),
            HARD,
            new Habits(false, false, true)),
        new Scene(
            "angle, overlapping: fresh 9.5 ± 1.2 degrees, hit again 2.5 ± 0.9",
            10,
            procedure("", ""),
            angle(),
            List.of("TW-1"),
            Map.of(),
            OVERLAPPING,
            Habits.PLAIN,
            EVERYTHING,
            Telling.OVERLAPPING),
        new Scene(
            "torque only, no positions",
            10,
            procedure("", ""),
            List.of(wrench("TW-1", false, Life.EVEN, WrenchClock.RIGHT)),
            List.of("TW-1"),
            Map.of(),
            HARD,
            Habits.PLAIN,
            EVERYTHING,
            Telling.NEVER),
        new Scene(
            "angle, a wrong wrench at hand and one that nobody enrolled",
            5,
            procedure("", "wrenches = [\"TW-1\"]\n"),
            List.of(
                wrench("TW-1", true, Life.EVEN, WrenchClock.RIGHT),
                wrench("TW-2", true, Life.EVEN, WrenchClock.RIGHT),
                wrench("TW-9", true, Life.EVEN, WrenchClock.RIGHT)),
            List.of("TW-1", "TW-2"),
            Map.of(),
            HARD,
            Habits.PLAIN,
            OTHER_WRENCH,
            Telling.ALWAYS));
  }

  private static Scene scene(
      String title,
      int jobs,
      String procedure,
      List<WrenchSpec> wrenches,
      JointKind joints,
      Habits habits) {
    return new Scene(
        title,
        jobs,
        procedure,
        wrenches,
        wrenches.stream().map(WrenchSpec::serial).toList(),
        Map.of(),
        joints,
        habits,
        EVERYTHING,
        Telling.ALWAYS);
  }

  private static List<WrenchSpec> angle() {
    return List.of(wrench("TW-1", true, Life.EVEN, WrenchClock.RIGHT));
  }

  private static List<WrenchSpec> stored() {
    Life life =
        new Life(
            0.002,
            Optional.of(new Restart(700, Optional.of(Duration.ofSeconds(-90)))),
            Optional.of(new Store(6, 0.05, 0.3, 0.3)));
    return List.of(wrench("TW-1", true, life, new WrenchClock(Duration.ofSeconds(-40), 5)));
  }

  private static WrenchSpec wrench(String serial, boolean angle, Life life, WrenchClock clock) {
    Gauge gauge =
        new Gauge(
            Unit.NEWTON_METRE,
            BigDecimal.TEN,
            new BigDecimal("120"),
            new BigDecimal("0.01"),
            0.005,
            0,
            angle);
    return new WrenchSpec(
        serial, gauge, Optional.of(clock), Optional.of(1L), false, Optional.empty(), life);
  }

  /**
   * A module with every kind of order.
   *
   * @param window lines for every last pass
   * @param only lines for every tighten step
   */
  private static String procedure(String window, String only) {
    return """
        [procedure]
        id = "TRIAL-1"
        revision = "A"
        title = "Module with every kind of order"

        [[step]]
        id = "look"
        kind = "attest"
        title = "Seats"
        statement = "The seats are clean."

        """
        + step(
            "plate",
            6,
            "45 N.m",
            "order = \"pattern\"\npattern = [1, 4, 2, 5, 3, 6]\n" + window + only)
        + """
        [[step]]
        id = "pivot"
        kind = "tighten"
        title = "Pivot bolts"
        fasteners = 2
        """
        + only
        + """
          [[step.pass]]
          name = "snug"
          torque = "18 N.m"
          tolerance = "10 %"
          [[step.pass]]
          name = "final"
          torque = "90 N.m"
          tolerance = "10 %"
          after = ["plate"]

        """
        + step("hub", 5, "33 N.m", "order = \"any\"\n" + window + only)
        + step("caliper", 4, "24 N.m", window + only)
        + """
        [[step]]
        id = "gap"
        kind = "measure"
        title = "Gap"
        unit = "mm"
        min = "3"
        max = "5"
        """;
  }

  private static String step(String id, int fasteners, String torque, String lines) {
    return "[[step]]\nid = \""
        + id
        + "\"\nkind = \"tighten\"\ntitle = \""
        + id
        + "\"\nfasteners = "
        + fasteners
        + "\ntorque = \""
        + torque
        + "\"\ntolerance = \"10 %\"\n"
        + lines
        + "\n";
  }
}
