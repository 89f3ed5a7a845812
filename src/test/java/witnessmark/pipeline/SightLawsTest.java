package witnessmark.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import witnessmark.entry.Effect;
import witnessmark.entry.Entry;
import witnessmark.entry.Judged;
import witnessmark.procedure.Pass;
import witnessmark.procedure.ProcedureFile;
import witnessmark.procedure.Stage;
import witnessmark.procedure.TightenStep;
import witnessmark.sight.Ability;
import witnessmark.sight.Announced;
import witnessmark.sight.Mistake;
import witnessmark.sight.Rack;
import witnessmark.sight.Sight;
import witnessmark.sight.Visibility;
import witnessmark.torque.Direction;
import witnessmark.torque.Torque;
import witnessmark.torque.TorqueEvent;

/**
 * Whatever is worked on and whatever goes wrong, the record never shows less than was announced.
 */
class SightLawsTest {
  private static final int RUNS = 6000;
  private static final List<Mistake> MADE =
      List.of(
          Mistake.HIDDEN_SKIP,
          Mistake.DOUBLE_HIT,
          Mistake.WRONG_GROUP,
          Mistake.TOO_EARLY,
          Mistake.WRONG_PLACE,
          Mistake.UNDER,
          Mistake.OVER,
          Mistake.CROSS_THREADED,
          Mistake.TIGHT_BEFORE);
  private static final List<Ability> ABILITIES =
      List.of(
          Ability.TORQUE_ONLY,
          Ability.ANGLE,
          Ability.ANGLE,
          Ability.POSITION,
          Ability.BREAKAWAY,
          Ability.ANGLE.and(Ability.POSITION),
          Ability.ANGLE.and(Ability.BREAKAWAY));

  private final Random chance = new Random(20261125);
  private String text;
  private Ability ability;
  private Bench bench;
  private List<Announced> announced;

  private <T> T any(List<T> list) {
    return list.get(chance.nextInt(list.size()));
  }

  private String step(String id) {
    String torque = any(List.of("40", "43", "50", "62", "70"));
    String band = "torque = \"" + torque + " N.m\"\ntolerance = \"10 %\"\n";
    String window =
        any(
            List.of(
                "",
                "",
                "angle-min = \"20\"\nangle-max = \"70\"\n",
                "angle-min = \"3\"\nangle-max = \"70\"\n"));
    String passes = "[[step.pass]]\nname = \"final\"\n" + band + window;
    if (chance.nextInt(4) == 0) {
      passes =
          "[[step.pass]]\nname = \"snug\"\ntorque = \"30 N.m\"\ntolerance = \"10 %\"\n" + passes;
    }
    if (chance.nextInt(4) == 0) {
      passes += "[[step.pass]]\nname = \"check\"\n" + band + "check = true\n";
      passes += any(List.of("", "order = \"any\"\n"));
    }
    return Bench.step(
        id,
        1 + chance.nextInt(3),
        any(List.of("", "", "order = \"any\"")),
        any(List.of("", "", "after = []")),
        any(List.of("", "", "recheck-angle = \"12\"", "recheck-angle = \"0\"")),
        passes);
  }

  private void begin() {
    StringBuilder steps = new StringBuilder(Bench.head());
    for (int i = 0; i <= chance.nextInt(3); i++) {
      steps.append(step("abc".substring(i, i + 1)));
    }
    text = steps.toString();
    ability = any(ABILITIES);
    bench = Bench.on(text);
    announced = Sight.of(ProcedureFile.parse("test.toml", text), Rack.of(Map.of("TW-1", ability)));
  }

  /** A pass takes no reading without an angle where it has a window: the wrench shows one there. */
  private Judged pull(int fastener, double torque, double angle, double breakaway) {
    String name = bench.job().plan().name(fastener);
    TorqueEvent bare =
        bench.event(
            "TW-1",
            String.format("%.2f N.m", torque),
            ability.angle() ? String.format("%.1f", angle) : "",
            Direction.CW,
            ability.position() ? name : "");
    TorqueEvent shown =
        new TorqueEvent(
            bare.wrench(),
            bare.number(),
            bare.time(),
            bare.torque(),
            bare.angle(),
            ability.breakaway()
                ? Optional.of(Torque.parse(String.format("%.2f N.m", breakaway)))
                : Optional.empty(),
            Direction.CW,
            bare.fastener(),
            Optional.empty());
    return ((Entry.TorqueTaken) bench.take(shown).entries().get(0)).judged();
  }

  private static Pass pass(Stage stage) {
    return ((TightenStep) stage.step()).passes().get(stage.pass());
  }

  private double within(Stage stage) {
    double low = pass(stage).band().low().newtonMetres().doubleValue();
    double high = pass(stage).band().high().newtonMetres().doubleValue();
    return Math.round((low + chance.nextDouble() * (high - low)) * 10) / 10.0;
  }

  /** A fresh turn; none in a check, where the fastener is tight. */
  private double turn(Stage stage) {
    return pass(stage).check() ? little(stage) : 21 + chance.nextInt(40);
  }

  private double little(Stage stage) {
    double most = ((TightenStep) stage.step()).care().telling().recheckAngle().doubleValue();
    return most == 0 ? 1 : Math.round(chance.nextDouble() * most * 10) / 10.0;
  }

  private List<Stage> open() {
    return bench.job().openStages().stream().filter(s -> !bench.job().next(s).isEmpty()).toList();
  }

  private Optional<Stage> tightIn(int fastener) {
    int done = bench.job().condition(fastener).done();
    return done == 0 ? Optional.empty() : Optional.of(bench.job().plan().stage(fastener, done - 1));
  }

  /** Pulls the next of an open stage as it should be; false where it was not credited so. */
  private boolean good() {
    Stage stage = any(open());
    int fastener = bench.job().next(stage).get(0);
    double held = tightIn(fastener).map(s -> pass(s).aim().doubleValue()).orElse(0.0);
    Judged judged =
        pull(fastener, within(stage), turn(stage), pass(stage).check() ? held * 0.95 : 3 + held);
    return judged.effect() == Effect.CREDITED
        && judged.fastener().equals(Optional.of(bench.job().plan().name(fastener)))
        && judged.pass().equals(Optional.of(pass(stage).name()));
  }

  /** What was shown of a mistake at a stage. */
  private record Shown(Mistake mistake, Stage stage, Visibility visibility) {}

  private static Visibility visible(Judged judged, String rightful) {
    if (judged.effect() == Effect.ASKS) {
      return Visibility.ASKED;
    }
    boolean wrong =
        judged.effect() == Effect.CREDITED && !judged.fastener().equals(Optional.of(rightful));
    return wrong ? Visibility.NOT_SEEN : Visibility.SEEN;
  }

  private Optional<Shown> mistake(Mistake mistake) {
    List<Integer> tight = new ArrayList<>();
    for (int f = 0; f < bench.job().plan().fasteners(); f++) {
      if (tightIn(f).isPresent()) {
        tight.add(f);
      }
    }
    List<Stage> open = open();
    return switch (mistake) {
      case DOUBLE_HIT, HIDDEN_SKIP ->
          tight.isEmpty() ? Optional.empty() : again(any(tight), mistake);
      case WRONG_GROUP -> wrongGroup(open);
      case TOO_EARLY -> open.size() == 1 ? tooEarly(open.get(0)) : Optional.empty();
      case WRONG_PLACE -> open.size() == 1 ? wrongPlace(open.get(0)) : Optional.empty();
      case UNDER -> under(any(open));
      case OVER -> over(any(open), tight);
      case TIGHT_BEFORE -> pass(open.get(0)).check() ? Optional.empty() : tightBefore(any(open));
      case CROSS_THREADED -> crossed(any(open));
      default -> Optional.empty();
    };
  }

  private Optional<Shown> again(int fastener, Mistake mistake) {
    Stage stage = tightIn(fastener).orElseThrow();
    double torque = within(stage);
    String name = bench.job().plan().name(fastener);
    Judged judged = pull(fastener, torque, little(stage), torque * 0.97);
    if (mistake == Mistake.HIDDEN_SKIP && !open().contains(stage)) {
      return Optional.empty();
    }
    boolean legitimate =
        judged.effect() == Effect.CREDITED && judged.fastener().equals(Optional.of(name));
    boolean hidden =
        judged.effect() != Effect.CREDITED
            || judged.fastener().orElseThrow().startsWith(stage.step().id() + "/")
                && judged.pass().equals(Optional.of(pass(stage).name()));
    return legitimate || mistake == Mistake.HIDDEN_SKIP && !hidden
        ? Optional.empty()
        : Optional.of(new Shown(mistake, stage, visible(judged, "")));
  }

  private Optional<Shown> wrongGroup(List<Stage> open) {
    Stage due = any(open);
    List<Stage> others = open.stream().filter(s -> s.step() != due.step()).toList();
    if (others.isEmpty()) {
      return Optional.empty();
    }
    Stage there = any(others);
    int fastener = bench.job().next(there).get(0);
    double held = tightIn(fastener).map(s -> pass(s).aim().doubleValue()).orElse(0.0);
    Judged judged = pull(fastener, within(there), turn(there), 3 + held);
    return Optional.of(
        new Shown(Mistake.WRONG_GROUP, due, visible(judged, bench.job().plan().name(fastener))));
  }

  private Optional<Shown> tooEarly(Stage due) {
    List<Stage> later =
        bench.job().plan().stages().stream()
            .filter(s -> s.number() != due.number() && !bench.job().done(s) && !pass(s).check())
            .toList();
    if (later.isEmpty()) {
      return Optional.empty();
    }
    Stage there = any(later);
    int first = bench.job().plan().first((TightenStep) there.step());
    int fastener = first + chance.nextInt(((TightenStep) there.step()).positions().size());
    if (fastener == bench.job().next(due).get(0) || tightIn(fastener).isPresent()) {
      return Optional.empty();
    }
    Judged judged = pull(fastener, within(there), turn(there), 3);
    return Optional.of(new Shown(Mistake.TOO_EARLY, due, visible(judged, "")));
  }

  private Optional<Shown> wrongPlace(Stage due) {
    List<Integer> others = new ArrayList<>();
    for (int f = 0; f < bench.job().plan().fasteners(); f++) {
      if (bench.job().plan().stepOf(f) != due.step() && tightIn(f).isEmpty()) {
        others.add(f);
      }
    }
    boolean said =
        announced.stream()
            .anyMatch(
                a ->
                    a.mistake() == Mistake.WRONG_PLACE
                        && (a.step() + ":" + a.pass()).equals(due.key()));
    if (others.isEmpty() || !said) {
      return Optional.empty();
    }
    Judged judged = pull(any(others), within(due), 21 + chance.nextInt(40), 3);
    return Optional.of(new Shown(Mistake.WRONG_PLACE, due, visible(judged, "")));
  }

  private Optional<Shown> under(Stage due) {
    double low = pass(due).band().low().newtonMetres().doubleValue();
    Judged judged =
        pull(bench.job().next(due).get(0), 20 + chance.nextDouble() * (low - 20.1), turn(due), 3);
    return Optional.of(new Shown(Mistake.UNDER, due, visible(judged, "")));
  }

  /**
   * On the one due, or on a tight one, which hardly turns up to a quarter more than it is held at.
   */
  private Optional<Shown> over(Stage expected, List<Integer> tight) {
    if (tight.isEmpty() || chance.nextBoolean()) {
      double high = pass(expected).band().high().newtonMetres().doubleValue();
      double torque = Math.min(100, high + 0.1 + chance.nextDouble() * 20);
      Judged judged = pull(bench.job().next(expected).get(0), torque, turn(expected), 3);
      return Optional.of(new Shown(Mistake.OVER, expected, visible(judged, "")));
    }
    int fastener = any(tight);
    Stage stage = tightIn(fastener).orElseThrow();
    int next = bench.job().condition(fastener).done();
    boolean due = open().stream().anyMatch(s -> s.step() == stage.step() && s.pass() == next);
    if (due) {
      return Optional.empty(); // more torque is what its next pass asks for
    }
    double high = pass(stage).band().high().newtonMetres().doubleValue();
    double torque = Math.min(100, high + 0.1 + chance.nextDouble() * high * 0.2);
    Judged judged = pull(fastener, torque, little(stage), torque * 0.9);
    return Optional.of(new Shown(Mistake.OVER, stage, visible(judged, "")));
  }

  /** The torque is reached below the window, where there is one. */
  private Optional<Shown> crossed(Stage due) {
    if (due.pass() > 0 || pass(due).angle().isEmpty()) {
      return Optional.empty();
    }
    double low = pass(due).angle().get().low().degrees().value().doubleValue();
    Judged judged =
        pull(bench.job().next(due).get(0), within(due), chance.nextDouble() * (low - 0.1), 3);
    return Optional.of(new Shown(Mistake.CROSS_THREADED, due, visible(judged, "")));
  }

  private Optional<Shown> tightBefore(Stage due) {
    if (pass(due).check()) {
      return Optional.empty();
    }
    double torque = within(due);
    Judged judged = pull(bench.job().next(due).get(0), torque, little(due), torque * 0.97);
    return Optional.of(new Shown(Mistake.TIGHT_BEFORE, due, visible(judged, "")));
  }

  @Test
  void theRecordNeverShowsLessThanWasAnnounced() {
    Map<Mistake, Integer> counts = new EnumMap<>(Mistake.class);
    for (int run = 0; run < RUNS; run++) {
      begin();
      int pulls = chance.nextInt(9);
      boolean going = true;
      for (int i = 0; going && i < pulls && !open().isEmpty(); i++) {
        going = good();
      }
      if (!going || open().isEmpty()) {
        continue;
      }
      Optional<Shown> shown = mistake(any(MADE));
      if (shown.isEmpty()) {
        continue;
      }
      counts.merge(shown.get().mistake(), 1, Integer::sum);
      Visibility said = said(shown.get());
      assertThat(shown.get().visibility())
          .as(
              "run %s: %s at %s with %s\n%s",
              run, shown.get().mistake(), shown.get().stage().key(), ability, text)
          .isLessThanOrEqualTo(said);
    }
    assertThat(counts).containsOnlyKeys(MADE.toArray(Mistake[]::new));
    assertThat(counts.values()).allSatisfy(c -> assertThat(c).isGreaterThan(20));
  }

  private Visibility said(Shown shown) {
    return announced.stream()
        .filter(a -> a.mistake() == shown.mistake())
        .filter(a -> a.step().equals(shown.stage().step().id()))
        .filter(a -> a.pass().equals(pass(shown.stage()).name()))
        .map(Announced::visibility)
        .findFirst()
        .orElse(Visibility.SEEN);
  }
}
