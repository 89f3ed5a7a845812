package wrenchsim.shop;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.PrintStream;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import wrenchsim.PaperBridge;
import wrenchsim.truth.Truth;
import wrenchsim.wire.ExpectMessage;
import wrenchsim.wire.MalformedMessage;
import wrenchsim.wire.VerdictMessage;
import wrenchsim.wrench.Gauge;
import wrenchsim.wrench.Unit;
import wrenchsim.wrench.Wrench;
import wrenchsim.wrench.WrenchClock;
import wrenchsim.wrench.WrenchSpec;

/** The closed loop against a bridge on paper in the same thread: no wire, no waiting. */
class OperatorTest {
  private static final Instant START = Instant.parse("2026-11-25T10:00:00Z");
  private static final String[] FOUR = {"hub/1", "hub/2", "hub/3", "hub/4"};

  @TempDir private Path directory;
  private final List<String> warnings = new ArrayList<>();
  private final PaperBridge bridge = new PaperBridge(FOUR);

  private List<String> work(long seed, double rate, PaperBridge bridge, String... script)
      throws Exception {
    Path file = directory.resolve("truth-" + System.nanoTime() + ".jsonl");
    Mistakes mistakes = new Mistakes(Mistakes.usual(rate), Chance.of(seed, "mistakes"));
    for (String line : script) {
      String[] sides = line.split("=");
      mistakes.script(sides[0], Mistake.parse(sides[1]));
    }
    Outcome outcome = work(seed, bridge, mistakes, file, "100");
    assertThat(warnings).as("seed %d", seed).isEmpty();
    assertThat(outcome).as("seed %d", seed).isEqualTo(Outcome.FINISHED);
    return Files.readAllLines(file);
  }

  private Outcome work(long seed, PaperBridge bridge, Mistakes mistakes, Path file, String max)
      throws Exception {
    Bench bench = new Bench();
    ShopClock clock = new ShopClock(Optional.of(START), Pace.FAST);
    try (Truth truth = new Truth(Optional.of(file), System.out, Truth.Tone.SILENT)) {
      bench.hear(ExpectMessage.read(bridge.expect(true)));
      return operator(
              seed, clock, bench, max, answering(bridge, bench), truth, mistakes, Habits.PLAIN)
          .work();
    }
  }

  private Operator operator(
      long seed,
      ShopClock clock,
      Bench bench,
      String max,
      Wire wire,
      Truth truth,
      Mistakes mistakes,
      Habits habits) {
    Person person =
        new Person(
            new Rack(List.of(tool(seed, clock, max))),
            new Parts(seed, JointKind.USUAL, Map.of()),
            clock,
            mistakes,
            habits,
            new Sheets(),
            seed,
            warnings::add);
    Patience patience = new Patience(Duration.ofMillis(50), Duration.ofMillis(50));
    return new Operator(bench, person, wire, truth, patience, warnings::add);
  }

  private static Tool tool(long seed, ShopClock clock, String max) {
    Gauge gauge =
        new Gauge(
            Unit.NEWTON_METRE,
            BigDecimal.ONE,
            new BigDecimal(max),
            new BigDecimal("0.01"),
            0.005,
            0,
            true);
    WrenchSpec spec =
        new WrenchSpec(
            "TW-0417",
            gauge,
            Optional.of(WrenchClock.RIGHT),
            Optional.of(1L),
            true,
            Optional.empty());
    return new Tool(new Wrench(spec, clock.start(), Chance.of(seed, "wrench")), seed);
  }

  private static Wire answering(PaperBridge bridge, Bench bench) {
    return message -> {
      try {
        for (byte[] verdict : bridge.takeAll(message.bytes())) {
          bench.hear(VerdictMessage.read(verdict));
          bench.hear(ExpectMessage.read(bridge.expect(false)));
          if (bridge.isNonconforming()) {
            bench.hear(ExpectMessage.read(bridge.expect(true)));
          }
        }
      } catch (MalformedMessage e) {
        throw new IOException(e);
      }
    };
  }

  private static List<String> field(List<String> lines, String name) {
    return lines.stream()
        .map(l -> l.replaceAll(".*\"" + name + "\":\"?([^\",}]*).*", "$1"))
        .toList();
  }

  @Test
  void everythingExpectedIsDoneInOrder() throws Exception {
    List<String> truth = work(1, 0, bridge);
    assertThat(field(truth, "fastener")).containsExactly(FOUR);
    assertThat(field(truth, "after")).containsOnly("tight");
    assertThat(field(truth, "event")).containsExactly("1", "2", "3", "4");
    assertThat(bridge.effects()).containsOnly("credited");
  }

  @Test
  void theSameSeedGivesTheSameTruthByteForByteAndAnotherSeedAnother() throws Exception {
    for (long seed = 1; seed <= 30; seed++) {
      List<String> once = work(seed, 0.3, new PaperBridge(FOUR));
      List<String> twice = work(seed, 0.3, new PaperBridge(FOUR));
      List<String> other = work(seed + 1000, 0.3, new PaperBridge(FOUR));
      assertThat(twice).as("seed %d", seed).isEqualTo(once);
      assertThat(other).as("seed %d", seed).isNotEqualTo(once);
    }
  }

  @Test
  void whateverGoesWrongByChanceTheJobIsFinishedAndTheTruthIsTight() throws Exception {
    for (long seed = 1; seed <= 60; seed++) {
      PaperBridge paper = new PaperBridge(FOUR);
      List<String> truth = work(seed, 0.3, paper);
      assertThat(paper.isComplete()).as("seed %d", seed).isTrue();
      for (String fastener : FOUR) {
        List<String> turns =
            truth.stream().filter(l -> l.contains("\"fastener\":\"" + fastener + "\"")).toList();
        assertThat(turns.get(turns.size() - 1)).as("seed %d", seed).contains("\"after\":\"tight\"");
      }
    }
  }

  @Test
  void underIsTightenedOn() throws Exception {
    List<String> truth = work(1, 0, bridge, "hub/2=under");
    assertThat(field(truth, "fastener"))
        .containsExactly("hub/1", "hub/2", "hub/2", "hub/3", "hub/4");
    assertThat(field(truth, "after")).containsExactly("tight", "snug", "tight", "tight", "tight");
    assertThat(bridge.effects())
        .containsExactly("credited", "again", "credited", "credited", "credited");
  }

  @Test
  void overIsUndoneOnceAPersonDecidedAndThenDoneAgain() throws Exception {
    List<String> truth = work(1, 0, bridge, "hub/2=over");
    assertThat(field(truth, "act"))
        .containsExactly("tighten", "tighten", "loosen", "tighten", "tighten", "tighten");
    assertThat(field(truth, "after"))
        .containsExactly("tight", "overtightened", "loosened", "tight", "tight", "tight");
    assertThat(field(truth, "direction").get(2)).isEqualTo("ccw");
    assertThat(bridge.effects())
        .containsExactly(
            "credited", "nonconforming", "loosened", "credited", "credited", "credited");
  }

  @Test
  void redeliverSendsTheSameEventTwice() throws Exception {
    List<String> truth = work(1, 0, bridge, "hub/2=redeliver");
    assertThat(field(truth, "act"))
        .containsExactly("tighten", "tighten", "redeliver", "tighten", "tighten");
    assertThat(field(truth, "event")).containsExactly("1", "2", "2", "3", "4");
    assertThat(bridge.repeats()).isEqualTo(1);
  }

  @Test
  void doubleHitsATightFastenerAgain() throws Exception {
    List<String> truth = work(1, 0, bridge, "hub/2=double");
    assertThat(field(truth, "fastener"))
        .containsExactly("hub/1", "hub/2", "hub/2", "hub/3", "hub/4");
    assertThat(Double.parseDouble(field(truth, "truedegrees").get(2))).isLessThan(5);
    assertThat(bridge.effects().get(2)).isEqualTo("rechecked");
  }

  @Test
  void loosenUndoesATightFastenerWhichIsThenDoneAgain() throws Exception {
    List<String> truth = work(1, 0, bridge, "hub/2=loosen");
    assertThat(field(truth, "act"))
        .containsExactly("tighten", "tighten", "loosen", "tighten", "tighten", "tighten");
    assertThat(field(truth, "fastener"))
        .containsExactly("hub/1", "hub/2", "hub/2", "hub/2", "hub/3", "hub/4");
  }

  @Test
  void aLastFastenerUndoneAfterTheJobWasCompleteIsDoneAgain() throws Exception {
    List<String> truth = work(1, 0, bridge, "hub/4=loosen");
    assertThat(field(truth, "fastener"))
        .containsExactly("hub/1", "hub/2", "hub/3", "hub/4", "hub/4", "hub/4");
    assertThat(field(truth, "after").subList(3, 6)).containsExactly("tight", "loosened", "tight");
    assertThat(bridge.isComplete()).isTrue();
  }

  @Test
  void skipTakesTheNeighbourAndTheLooseOneIsFoundOnceTheBridgeDoubtsTheNeighboursTurn()
      throws Exception {
    List<String> truth = work(1, 0, bridge, "hub/2=skip");
    assertThat(field(truth, "expected"))
        .containsExactly("hub/1", "hub/2", "hub/3", "hub/3", "hub/4");
    assertThat(field(truth, "fastener"))
        .containsExactly("hub/1", "hub/3", "hub/3", "hub/2", "hub/4");
    assertThat(bridge.effects())
        .containsExactly("credited", "credited", "rechecked", "credited", "credited");
  }

  @Test
  void whatIsExpectedForEverIsGivenUp() throws Exception {
    Path file = directory.resolve("deaf.jsonl");
    PaperBridge deaf =
        new PaperBridge(FOUR) {
          @Override
          public List<byte[]> takeAll(byte[] message) {
            String event = new String(message, UTF_8).replaceAll(".*\"event\":([0-9]+).*", "$1");
            String verdict = "{\"data\":{\"wrench\":\"TW-0417\",\"event\":%s,\"effect\":\"none\"}}";
            return List.of(verdict.formatted(event).getBytes(UTF_8));
          }
        };
    assertThat(work(1, deaf, Mistakes.none(), file, "100")).isEqualTo(Outcome.UNFINISHED);
    assertThat(Files.readAllLines(file)).hasSize(6);
    assertThat(warnings)
        .containsExactly(
            "tried hub/1 6 times and it is still expected; waiting until something else is",
            "nothing was heard for 0 s, and the station's state is 'tighten' with 0 done: a person's command may be due there");
  }

  @Test
  void withoutAWrenchThatHoldsTheBandNothingIsTouched() throws Exception {
    Path file = directory.resolve("none.jsonl");
    Outcome outcome = work(1, bridge, Mistakes.none(), file, "30");
    assertThat(outcome).isEqualTo(Outcome.UNFINISHED);
    assertThat(Files.readAllLines(file)).isEmpty();
    assertThat(warnings.get(0))
        .isEqualTo(
            "no wrench here may do hub/1: give one with --wrench that is allowed there and whose range holds the band");
  }

  @Test
  void mistakesAreNamedAsDocumented() {
    assertThat(Mistake.parse("skip:hub/4"))
        .isEqualTo(new Mistake(Mistake.Kind.SKIP, Optional.of("hub/4")));
    assertThatThrownBy(() -> Mistake.parse("undr"))
        .hasMessage(
            "a mistake is one of under, over, redeliver, skip, double, loosen, wrong, wrongtool, cross, skip:OTHER or wrong:OTHER, but got 'undr'");
    assertThatThrownBy(() -> Mistake.parse("over:hub/4"))
        .hasMessage("only skip and wrong name another fastener, but got over:hub/4");
  }

  @Test
  void whatIsToBeConfirmedComesFirstWhereThatIsTheHabit() throws Exception {
    String tighten = new String(bridge.expect(true), UTF_8);
    String gate = "\"expect\":[{\"step\":\"frame-check\",\"statement\":\"clean\"},";
    for (boolean gatesFirst : new boolean[] {true, false}) {
      Bench bench = new Bench();
      ShopClock clock = new ShopClock(Optional.of(START), Pace.FAST);
      bench.hear(ExpectMessage.read(tighten.replace("\"expect\":[", gate).getBytes(UTF_8)));
      List<String> sent = new ArrayList<>();
      Path file = directory.resolve("gates-" + gatesFirst);
      try (Truth truth = new Truth(Optional.of(file), System.out, Truth.Tone.SILENT)) {
        operator(
                1,
                clock,
                bench,
                "100",
                message -> sent.add(new String(message.bytes(), UTF_8)),
                truth,
                Mistakes.none(),
                new Habits(false, gatesFirst, false))
            .work();
      }
      assertThat(sent).as("gates first: %s", gatesFirst).hasSize(gatesFirst ? 0 : 1);
    }
  }

  @Test
  void theSentenceIsOneATechnicianWouldFollow() throws Exception {
    java.io.ByteArrayOutputStream out = new java.io.ByteArrayOutputStream();
    Bench bench = new Bench();
    ShopClock clock = new ShopClock(Optional.of(START), Pace.FAST);
    bench.hear(ExpectMessage.read(bridge.expect(true)));
    try (Truth truth =
        new Truth(Optional.empty(), new PrintStream(out, true), Truth.Tone.SENTENCES)) {
      operator(
              1,
              clock,
              bench,
              "100",
              answering(bridge, bench),
              truth,
              Mistakes.none().script("hub/1", Mistake.parse("loosen")),
              Habits.PLAIN)
          .work();
    }
    List<String> lines = out.toString().lines().toList();
    assertThat(lines.get(0))
        .matches(
            "TW-0417 on hub/1: 3[0-9]\\.[0-9]{2} N\\.m, [0-9]+\\.[0-9] deg \\(loosen on purpose\\)");
    assertThat(lines.get(1))
        .matches(
            "TW-0417 loosens hub/1: 2[0-9]\\.[0-9]{2} N\\.m, [0-9]+\\.[0-9] deg \\(loosen on purpose\\)");
    assertThat(lines.get(2))
        .matches("TW-0417 on hub/1: 3[0-9]\\.[0-9]{2} N\\.m, [0-9]+\\.[0-9] deg");
  }
}
