package witnessmark.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import witnessmark.desk.Attest;
import witnessmark.entry.Entry;
import witnessmark.entry.Judged;
import witnessmark.job.Act;
import witnessmark.job.History;
import witnessmark.torque.Direction;
import witnessmark.torque.TorqueEvent;

/** Laws about when things become known; every seed is one story. */
class LateLawsTest {
  private static final int STORIES = Integer.getInteger("laws.count", 300);
  private static final int EVENTS = 40;

  static List<Long> seeds() {
    return new Random(20261126).longs(STORIES).boxed().toList();
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void theOrderInWhichLateBurstsArriveDoesNotChangeTheFinalRecord(long seed) {
    Told prompt = told(seed, new Random(0), 0, 0);
    Told late = told(seed, new Random(seed + 1), 0.4, 0);
    Told other = told(seed, new Random(seed + 2), 0.7, 0.3);
    assertThat(late.decisions()).as("seed %d", seed).isEqualTo(prompt.decisions());
    assertThat(late.fasteners()).as("seed %d", seed).isEqualTo(prompt.fasteners());
    assertThat(other.decisions()).as("seed %d", seed).isEqualTo(prompt.decisions());
    assertThat(other.fasteners()).as("seed %d", seed).isEqualTo(prompt.fasteners());
  }

  /** The law says nothing if nothing is ever late or ever decided anew. */
  @Test
  void inManyStoriesSomethingIsDecidedAnew() {
    long reread =
        seeds().stream()
            .filter(
                seed ->
                    told(seed, new Random(seed + 1), 0.4, 0).bench().log().stream()
                        .anyMatch(Entry.Reread.class::isInstance))
            .count();
    assertThat(reread).isGreaterThan(STORIES / 4L);
  }

  /** What the log shows in the end. */
  private record Told(Bench bench) {
    /** The decision that counts for each event, by wrench and number. */
    Map<String, Judged> decisions() {
      Map<String, Judged> decisions = new TreeMap<>();
      for (Act act : History.all(bench.job())) {
        if (act.entry() instanceof Entry.TorqueTaken t) {
          decisions.put(
              t.event().wrench() + "#" + t.event().number().getAsLong(),
              act.judged().orElseThrow().withText(""));
        }
      }
      assertThat(decisions).hasSize(EVENTS);
      return decisions;
    }

    List<String> fasteners() {
      List<String> all = new ArrayList<>();
      bench
          .job()
          .conditions()
          .forEach(
              c ->
                  all.add(
                      c.done() + " " + c.nonconforming() + " " + c.rework() + " " + c.turned()));
      all.add(bench.job().gates().keySet().toString());
      return all;
    }
  }

  /**
   * The same events in every telling of a seed.
   *
   * @param held the share of events that are stored first and delivered in a burst later
   * @param again the share of them that is delivered twice
   */
  private static Told told(long seed, Random chance, double held, double again) {
    Random random = new Random(seed);
    Bench bench = Bench.on(procedure(random));
    List<TorqueEvent> stored = new ArrayList<>();
    for (int i = 0; i < EVENTS; i++) {
      if (i == EVENTS / 2) {
        bench.person(new Attest(bench.jobName(), "look", "badge-07"));
      }
      TorqueEvent event = event(bench, random);
      if (chance.nextDouble() < held) {
        stored.add(event);
      } else {
        bench.take(event);
      }
      if (chance.nextInt(12) == 0) {
        deliver(bench, stored, chance, again);
      }
    }
    bench.rest(600);
    deliver(bench, stored, chance, again);
    deliver(bench, stored, chance, again);
    return new Told(bench);
  }

  /** Those that are old enough to be late, in any order. */
  private static void deliver(Bench bench, List<TorqueEvent> stored, Random chance, double again) {
    List<TorqueEvent> old =
        new ArrayList<>(
            stored.stream()
                .filter(e -> e.time().orElseThrow().isBefore(bench.now().minusSeconds(16)))
                .toList());
    java.util.Collections.shuffle(old, chance);
    stored.removeAll(old);
    for (TorqueEvent event : old) {
      bench.takeStored(event);
      if (chance.nextDouble() < again) {
        stored.add(event);
      }
    }
  }

  private static TorqueEvent event(Bench bench, Random random) {
    String[] torques = {"50 N.m", "50 N.m", "50.0 N.m", "51 N.m", "25 N.m", "44 N.m", "90 N.m"};
    String[] angles = {"", "", "40", "2", "38.5"};
    String torque = torques[random.nextInt(40) == 0 ? 6 : random.nextInt(6)];
    Direction direction = random.nextInt(15) == 0 ? Direction.CCW : Direction.CW;
    String fastener = random.nextInt(4) == 0 ? "a/" + (1 + random.nextInt(3)) : "";
    return bench.event(
        "TW-" + (1 + random.nextInt(3)),
        torque,
        angles[random.nextInt(angles.length)],
        direction,
        fastener);
  }

  private static String procedure(Random random) {
    String two =
        "[[step.pass]]\nname = \"snug\"\ntorque = \"25 N.m\"\ntolerance = \"20 %\"\n"
            + "[[step.pass]]\nname = \"final\"\ntorque = \"50 N.m\"\ntolerance = \"10 %\"";
    return Bench.group(3, random.nextBoolean() ? "order = \"any\"" : "wrenches = [\"TW-1\"]")
        + Bench.step("b", 4, random.nextBoolean() ? two : "wrenches = [\"TW-2\"]")
        + "[[step]]\nid = \"look\"\nkind = \"attest\"\ntitle = \"Look\"\nstatement = \"Done.\"\n"
        + "after = []\n"
        + Bench.step("c", 3, random.nextBoolean() ? "after = []" : "after = [\"look\", \"a\"]");
  }
}
