package witnessmark.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import witnessmark.desk.Assign;
import witnessmark.desk.Attest;
import witnessmark.desk.CloseJob;
import witnessmark.desk.Command;
import witnessmark.desk.Declined;
import witnessmark.desk.Dispose;
import witnessmark.entry.Disposition;
import witnessmark.entry.Effect;
import witnessmark.entry.Entry;
import witnessmark.entry.Judged;
import witnessmark.job.Choices;
import witnessmark.job.Condition;
import witnessmark.job.Due;
import witnessmark.job.JobState;
import witnessmark.job.Plan;
import witnessmark.job.Shop;
import witnessmark.job.Undo;
import witnessmark.procedure.Stage;
import witnessmark.procedure.TightenStep;
import witnessmark.torque.Direction;
import witnessmark.torque.TorqueEvent;
import witnessmark.torque.Verdict;

/** Laws that hold for whatever happens at a bench; every seed is one story. */
class LawsTest {
  private static final int STORIES = Integer.getInteger("laws.count", 300);

  static List<Long> seeds() {
    return new Random(20261125).longs(STORIES).boxed().toList();
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void replayingTheEntriesGivesTheSameState(long seed) {
    Bench bench = story(seed, 60, 0);
    assertSame(bench.replayed(), bench.shop(), seed);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void noEventChangesTheStateTwiceWhateverIsRedelivered(long seed) {
    assertSame(story(seed, 60, 0.5).shop(), story(seed, 60, 0).shop(), seed);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void aJobClosesOnlyWhenEveryLastVerdictStandsAndEveryGateIsSatisfied(long seed) {
    Bench bench = finished(seed);
    JobState job = bench.job();
    boolean closed = closes(bench);
    Standing standing = Standing.of(bench.log(), bench.jobName());
    assertThat(closed).as("seed %d", seed).isEqualTo(standing.complete(job.plan()));
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void noFastenerIsUsedTwiceTriedWithoutEndOrTightenedBeforeWhatIsUsedUpIsRenewed(long seed) {
    Bench bench = finished(seed);
    Plan plan = bench.job().plan();
    closes(bench);
    assertThat(Wearing.wrong(bench.log(), plan)).as("seed %d", seed).isEmpty();
  }

  /** The law above says nothing of what never happens. */
  @Test
  void someFastenersAreSpentByLooseningAndSomeByTrying() {
    List<Judged> stopped =
        seeds().stream()
            .flatMap(seed -> finished(seed).log().stream())
            .filter(Entry.TorqueTaken.class::isInstance)
            .map(e -> ((Entry.TorqueTaken) e).judged())
            .filter(j -> j.effect() == Effect.NONCONFORMING)
            .toList();
    assertThat(stopped).anyMatch(j -> j.verdict().isEmpty());
    assertThat(stopped).anyMatch(j -> j.verdict().equals(Optional.of(Verdict.UNDER_TORQUE)));
    assertThat(stopped).anyMatch(j -> j.undoes().contains("locker"));
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void interleavingsOfTwoWrenchesOnDisjointGroupsGiveTheSameResult(long seed) {
    Random random = new Random(seed);
    String procedure =
        Bench.group(4, "wrenches = [\"TW-1\"]", "order = \"pattern\"", "pattern = [2, 4, 1, 3]")
            + Bench.step("b", 5, "after = []", "wrenches = [\"TW-2\"]");
    List<Hit> first = hits(random, 4);
    List<Hit> second = hits(random, 5);
    assertThat(conditions(interleaved(procedure, first, second, random)))
        .as("seed %d", seed)
        .isEqualTo(conditions(interleaved(procedure, first, second, new Random(seed + 1))));
  }

  /** Undone and done again, with nothing in between, a fastener is as if it had only been done. */
  @ParameterizedTest
  @MethodSource("seeds")
  void looseningAndTighteningAnewIsAsNeverLoosenedButForItsTrace(long seed) {
    Bench once = story(seed, 40, 0);
    Bench twice = story(seed, 40, 0);
    Random random = new Random(seed + 3);
    int f = random.nextInt(once.job().plan().fasteners());
    String name = once.job().plan().name(f);
    int passes = once.job().plan().stepOf(f).passes().size();
    if (!tightest(once, f, passes) || !Undo.of(once.job(), f).isEmpty()) {
      return;
    }
    twice.loosen(name);
    Stage due = twice.job().plan().stage(f, 0);
    if (!twice.job().openStages().contains(due) || !twice.job().next(due).contains(f)) {
      return; // what it waits for was undone, or another comes first
    }
    LOOSENED.incrementAndGet();
    for (int pass = 0; pass < passes; pass++) {
      String target =
          once.job().plan().stepOf(f).passes().get(pass).target().orElseThrow().toString();
      twice.hitOn(name, target);
    }
    assertThat(twice.job().conditions().stream().map(LawsTest::lasting).toList())
        .as("seed %d", seed)
        .isEqualTo(once.job().conditions().stream().map(LawsTest::lasting).toList());
    assertThat(twice.job().gates()).as("seed %d", seed).isEqualTo(once.job().gates());
    assertThat(twice.size()).as("seed %d", seed).isEqualTo(once.size() + 1 + passes);
  }

  private static final java.util.concurrent.atomic.AtomicInteger LOOSENED =
      new java.util.concurrent.atomic.AtomicInteger();

  @AfterAll
  static void somethingWasLoosened() {
    assertThat(LOOSENED.get()).isGreaterThan(STORIES / 100);
  }

  private static boolean tightest(Bench bench, int fastener, int passes) {
    Condition c = bench.job().condition(fastener);
    return c.done() == passes && !c.nonconforming() && !c.scrapped();
  }

  private static String lasting(Condition c) {
    return c.done() + " " + c.nonconforming() + " " + c.scrapped();
  }

  /** A law about closing says nothing if no story ever closes. */
  @Test
  void someStoriesCloseAndSomeDoNot() {
    long closed = seeds().stream().filter(seed -> closes(finished(seed))).count();
    assertThat(closed).isBetween(STORIES / 20L, STORIES - STORIES / 20L);
  }

  private static void assertSame(Shop one, Shop other, long seed) {
    assertThat(one.jobs().keySet()).as("seed %d", seed).isEqualTo(other.jobs().keySet());
    for (String job : one.jobs().keySet()) {
      JobState a = one.jobs().get(job);
      JobState b = other.jobs().get(job);
      assertThat(a.conditions()).as("seed %d", seed).isEqualTo(b.conditions());
      assertThat(a.gates()).as("seed %d", seed).isEqualTo(b.gates());
      assertThat(a.questions()).as("seed %d", seed).isEqualTo(b.questions());
      assertThat(a.settled()).as("seed %d", seed).isEqualTo(b.settled());
    }
    assertThat(one.size()).as("seed %d", seed).isEqualTo(other.size());
  }

  private record Hit(String torque, String angle) {}

  /**
   * The fasteners of a group in turn; some are pulled twice, some hit again when they are tight.
   */
  private static List<Hit> hits(Random random, int fasteners) {
    List<Hit> hits = new ArrayList<>();
    for (int i = 0; i < fasteners; i++) {
      boolean twice = random.nextInt(3) == 0;
      if (twice) {
        hits.add(new Hit("40 N.m", "22"));
      }
      hits.add(new Hit("50 N.m", twice ? "8" : "3" + random.nextInt(10)));
      if (random.nextInt(3) == 0) {
        hits.add(new Hit("50 N.m", "1." + random.nextInt(10)));
      }
    }
    return hits;
  }

  private static Bench interleaved(
      String procedure, List<Hit> first, List<Hit> second, Random random) {
    Bench bench = Bench.on(procedure);
    int i = 0;
    int j = 0;
    while (i < first.size() || j < second.size()) {
      boolean one = j == second.size() || (i < first.size() && random.nextBoolean());
      Hit hit = one ? first.get(i++) : second.get(j++);
      bench.hit(one ? "TW-1" : "TW-2", hit.torque(), hit.angle(), "");
    }
    return bench;
  }

  private static List<Integer> conditions(Bench bench) {
    assertThat(bench.job().complete()).isTrue();
    return bench.job().conditions().stream().map(c -> c.done()).toList();
  }

  /**
   * A random procedure worked on at random; the same seed acts the same, whatever is redelivered.
   */
  private static Bench story(long seed, int acts, double redelivered) {
    Random random = new Random(seed);
    Random again = new Random(~seed);
    Bench bench = Bench.on(procedure(random));
    // With an uncertainty guarded steps can be done, too.
    bench.person(Bench.wrench("TW-1", "2"));
    List<TorqueEvent> sent = new ArrayList<>();
    for (int i = 0; i < acts; i++) {
      if (random.nextInt(5) == 0) {
        person(bench, random);
      } else {
        TorqueEvent event = event(bench, random);
        sent.add(event);
        bench.take(event);
      }
      while (!sent.isEmpty() && again.nextDouble() < redelivered) {
        bench.take(sent.get(again.nextInt(sent.size())), true);
      }
    }
    return bench;
  }

  @Test
  void someStoriesHaveUndecidedReadingsOnEitherSide() {
    List<Effect> effects =
        seeds().stream()
            .flatMap(seed -> story(seed, 60, 0).log().stream())
            .filter(Entry.TorqueTaken.class::isInstance)
            .map(e -> ((Entry.TorqueTaken) e).judged())
            .filter(j -> j.verdict().equals(Optional.of(Verdict.UNDECIDED)))
            .map(j -> j.effect())
            .toList();
    assertThat(effects).contains(Effect.AGAIN, Effect.NONCONFORMING);
  }

  /** A story whose people then mostly do what is due, for a while. */
  private static Bench finished(long seed) {
    Bench bench = story(seed, 40, 0.1);
    Random random = new Random(seed + 7);
    int acts = random.nextInt(40);
    for (int i = 0; i < acts && !bench.job().complete(); i++) {
      if (random.nextInt(20) == 0) {
        bench.take(event(bench, random));
      } else {
        doWhatIsDue(bench);
      }
    }
    return bench;
  }

  private static void doWhatIsDue(Bench bench) {
    Due due = Due.of(bench.job());
    String job = bench.jobName();
    if (!due.nonconforming().isEmpty()) {
      String fastener = bench.job().plan().name(due.nonconforming().get(0));
      Disposition first =
          Choices.of(bench.job(), due.nonconforming().get(0)).keySet().iterator().next();
      bench.person(new Dispose(job, fastener, first, "badge-07", "x"));
    } else if (!due.questions().isEmpty()) {
      long n = due.questions().get(0);
      Entry.TorqueTaken asks = (Entry.TorqueTaken) bench.log().get((int) n);
      bench.person(new Assign(n, asks, job, Optional.empty(), "badge-07", "x"));
    } else if (due.stages().get(0).step() instanceof TightenStep step) {
      Stage stage = due.stages().get(0);
      String target = step.passes().get(stage.pass()).target().orElseThrow().toString();
      bench.hit("TW-1", target, "30", bench.job().plan().name(bench.job().next(stage).get(0)));
    } else {
      bench.person(new Attest(job, due.stages().get(0).step().id(), "badge-07"));
    }
  }

  private static String procedure(Random random) {
    String two =
        "[[step.pass]]\nname = \"snug\"\ntorque = \"25 N.m\"\ntolerance = \"20 %\"\n"
            + "[[step.pass]]\nname = \"final\"\ntorque = \"50 N.m\"\ntolerance = \"10 %\"";
    String order = random.nextBoolean() ? "order = \"any\"" : "order = \"strict\"";
    String[] tellings = {
      "", "\nangle-min = \"20\"\nangle-max = \"70\"", "\nseconds-between = \"6\""
    };
    order += tellings[random.nextInt(tellings.length)];
    String wire =
        "[[step]]\nid = \"wire\"\nkind = \"attest\"\ntitle = \"Wire\"\nstatement = \"Fitted.\"\n"
            + "after = [\"a\"]\n";
    return Bench.head()
        + wire.replace("wire", "locker").replace("after = [\"a\"]", "renew = true")
        + Bench.step("a", 1 + random.nextInt(3), order, "after = [\"locker\"]", wear(random))
        + Bench.step(
            "b",
            1 + random.nextInt(3),
            wear(random),
            random.nextBoolean() ? two : "after = [\"a\"]")
        + wire
        + Bench.step(
            "c",
            2,
            random.nextBoolean() ? "acceptance = \"guarded\"" : "acceptance = \"simple\"",
            random.nextBoolean() ? "after = []" : "after = [\"wire\", \"b\"]");
  }

  private static String wear(Random random) {
    return (random.nextBoolean() ? "single-use = true\n" : "")
        + (random.nextBoolean() ? "tries = " + (1 + random.nextInt(3)) + "\n" : "")
        + (random.nextInt(3) == 0 ? "criticality = \"danger\"" : "");
  }

  private static TorqueEvent event(Bench bench, Random random) {
    String[] torques = {
      "50 N.m", "50 N.m", "50 N.m", "25 N.m", "40 N.m", "60 N.m", "19 N.m", "45.1 N.m", "54.9 N.m"
    };
    String fastener = "";
    if (random.nextInt(3) == 0) {
      int f = random.nextInt(bench.job().plan().fasteners() + 1);
      fastener = f == bench.job().plan().fasteners() ? "no/1" : bench.job().plan().name(f);
    }
    Direction direction = random.nextInt(12) == 0 ? Direction.CCW : Direction.CW;
    String wrench = "TW-" + (1 + random.nextInt(10) / 4);
    String[] angles = {"", "", "30", "33", "27", "1.5", "2", "4.9", "9", "15", "80"};
    return bench.event(
        wrench,
        torques[random.nextInt(torques.length)],
        angles[random.nextInt(angles.length)],
        direction,
        fastener);
  }

  private static void person(Bench bench, Random random) {
    Command command =
        switch (random.nextInt(3)) {
          case 0 ->
              new Attest(bench.jobName(), random.nextBoolean() ? "wire" : "locker", "badge-07");
          case 1 -> {
            int f = random.nextInt(bench.job().plan().fasteners());
            Disposition[] all = {Disposition.REWORK, Disposition.REPLACE, Disposition.USE_AS_IS};
            yield new Dispose(
                bench.jobName(),
                bench.job().plan().name(f),
                all[random.nextInt(3)],
                "badge-07",
                "x");
          }
          default -> {
            Optional<Long> question = bench.job().questions().stream().sorted().findFirst();
            int f = random.nextInt(bench.job().plan().fasteners());
            yield question
                .<Command>map(
                    n ->
                        new Assign(
                            n,
                            (Entry.TorqueTaken) bench.log().get(n.intValue()),
                            bench.jobName(),
                            random.nextInt(4) == 0
                                ? Optional.empty()
                                : Optional.of(bench.job().plan().name(f)),
                            "badge-07",
                            "x"))
                .orElse((shop, at) -> List.of());
          }
        };
    try {
      bench.person(command);
    } catch (Declined e) {
      // a person was told no; nothing happened
    }
  }

  private static boolean closes(Bench bench) {
    try {
      bench.person(new CloseJob(bench.jobName(), Optional.empty()));
      return true;
    } catch (Declined e) {
      return false;
    }
  }
}
