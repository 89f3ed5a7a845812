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
import wrenchsim.wire.TorqueMessage;
import wrenchsim.wire.VerdictMessage;
import wrenchsim.wrench.Gauge;
import wrenchsim.wrench.Sender;
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
    Mistakes mistakes = new Mistakes(rate, Chance.of(seed, "mistakes"));
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
      return new Operator(
              bench,
              new Rack(List.of(tool(seed, clock, answering(bridge, bench), max))),
              new Parts(seed, Optional.empty(), Map.of()),
              clock,
              truth,
              mistakes,
              new Operator.Habits(Duration.ofMillis(50), Duration.ofMillis(50), false, false),
              seed,
              warnings::add)
          .work();
    }
  }

  private static Tool tool(long seed, ShopClock clock, Sender sender, String max) {
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
    return new Tool(new Wrench(spec, clock.start(), Chance.of(seed, "wrench")), sender);
  }

  private static Sender answering(PaperBridge bridge, Bench bench) {
    return reading -> {
      try {
        Optional<byte[]> verdict = bridge.take(TorqueMessage.encode(reading));
        if (verdict.isPresent()) {
          bench.hear(VerdictMessage.read(verdict.get()));
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
  void skipTakesTheNeighbourSoThatTheBridgeBelievesWhatIsNotTrue() throws Exception {
    Path file = directory.resolve("skip.jsonl");
    Mistakes mistakes = new Mistakes(0, Chance.of(1, "mistakes"));
    mistakes.script("hub/2", Mistake.parse("skip"));
    Outcome outcome = work(1, bridge, mistakes, file, "100");
    List<String> truth = Files.readAllLines(file);
    assertThat(field(truth, "expected").subList(0, 3)).containsExactly("hub/1", "hub/2", "hub/3");
    assertThat(field(truth, "fastener").subList(0, 3)).containsExactly("hub/1", "hub/3", "hub/3");
    assertThat(bridge.effects().subList(0, 3)).containsExactly("credited", "credited", "rechecked");
    // hub/3 hardly turns any more, so this bridge never credits it: the person gives up and waits.
    assertThat(outcome).isEqualTo(Outcome.UNFINISHED);
    assertThat(warnings)
        .containsExactly(
            "tried hub/3 6 times and it is still expected; waiting until something else is",
            "nothing was heard for 0 s, and the station's state is 'tighten' with 2 done: a person's command may be due there");
  }

  @Test
  void withoutAWrenchThatHoldsTheBandNothingIsTouched() throws Exception {
    Path file = directory.resolve("none.jsonl");
    Outcome outcome = work(1, bridge, new Mistakes(0, Chance.of(1, "m")), file, "30");
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
            "a mistake is one of under, over, redeliver, skip, double, loosen or skip:NEIGHBOUR, but got 'undr'");
    assertThatThrownBy(() -> Mistake.parse("over:hub/4"))
        .hasMessage("only skip names a neighbour, but got over:hub/4");
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
        new Operator(
                bench,
                new Rack(List.of(tool(1, clock, reading -> sent.add(reading.wrench()), "100"))),
                new Parts(1, Optional.empty(), Map.of()),
                clock,
                truth,
                new Mistakes(0, Chance.of(1, "m")),
                new Operator.Habits(
                    Duration.ofMillis(50), Duration.ofMillis(50), false, gatesFirst),
                1,
                warnings::add)
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
      new Operator(
              bench,
              new Rack(List.of(tool(1, clock, answering(bridge, bench), "100"))),
              new Parts(1, Optional.empty(), Map.of()),
              clock,
              truth,
              new Mistakes(0, Chance.of(1, "m")).script("hub/1", Mistake.parse("loosen")),
              new Operator.Habits(Duration.ofMillis(50), Duration.ofMillis(50), false, false),
              1,
              warnings::add)
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
