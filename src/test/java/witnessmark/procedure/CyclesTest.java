package witnessmark.procedure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

class CyclesTest {
  private static final int GRAPHS = 3_000;

  private static List<Prerequisite> some(Random random, int steps) {
    List<Prerequisite> after = new ArrayList<>();
    for (int i = random.nextInt(3); i > 0; i--) {
      String step = "s" + random.nextInt(steps);
      Optional<String> pass =
          random.nextBoolean() ? Optional.of("p" + random.nextInt(3)) : Optional.empty();
      after.add(new Prerequisite(step, pass));
    }
    return after;
  }

  private static Waits random(Random random) {
    int count = 1 + random.nextInt(7);
    List<Waits.StepNames> steps = new ArrayList<>();
    for (int s = 0; s < count; s++) {
      List<Waits.PassNames> passes = new ArrayList<>();
      for (int p = random.nextInt(3); p >= 0; p--) {
        passes.add(
            new Waits.PassNames(
                "p" + passes.size(), random.nextInt(5) == 0 ? some(random, count) : List.of()));
      }
      Optional<List<Prerequisite>> after =
          random.nextInt(3) == 0 ? Optional.empty() : Optional.of(some(random, count));
      steps.add(new Waits.StepNames("s" + s, after, true, passes));
    }
    return new Waits(steps);
  }

  /** Warshall's closure: says of every pair whether one waits for the other. */
  private static boolean[][] closure(Waits waits) {
    int n = waits.stages();
    boolean[][] reach = new boolean[n][n];
    for (int i = 0; i < n; i++) {
      for (int j : waits.requires(i)) {
        reach[i][j] = true;
      }
    }
    for (int k = 0; k < n; k++) {
      for (int i = 0; i < n; i++) {
        for (int j = 0; j < n; j++) {
          reach[i][j] |= reach[i][k] && reach[k][j];
        }
      }
    }
    return reach;
  }

  @Test
  void membersAndBlockedStagesAreThoseThatBruteForceFinds() {
    long seed = 210;
    Random random = new Random(seed);
    int cyclic = 0;
    int blocked = 0;
    for (int g = 0; g < GRAPHS; g++) {
      Waits waits = random(random);
      boolean[][] reach = closure(waits);
      Cycles cycles = Cycles.of(waits);
      for (int i = 0; i < waits.stages(); i++) {
        boolean behind = false;
        for (int j = 0; j < waits.stages(); j++) {
          behind |= reach[i][j] && reach[j][j];
        }
        String where = "seed " + seed + ", graph " + g + ", stage " + i;
        assertThat(cycles.members().get(i)).as(where).isEqualTo(reach[i][i]);
        assertThat(cycles.blocked().get(i)).as(where).isEqualTo(behind && !reach[i][i]);
      }
      cyclic += cycles.cycles().isEmpty() ? 0 : 1;
      blocked += cycles.blocked().isEmpty() ? 0 : 1;
    }
    assertThat(cyclic).as("graphs with a cycle").isBetween(GRAPHS / 10, GRAPHS * 9 / 10);
    assertThat(blocked).as("graphs with a blocked stage").isGreaterThan(GRAPHS / 20);
  }

  @Test
  void everyCycleShownIsOneAndNoTwoShareAStage() {
    long seed = 211;
    Random random = new Random(seed);
    for (int g = 0; g < GRAPHS; g++) {
      Waits waits = random(random);
      boolean[][] reach = closure(waits);
      String where = "seed " + seed + ", graph " + g;
      List<List<Integer>> cycles = Cycles.of(waits).cycles();
      for (List<Integer> cycle : cycles) {
        assertThat(cycle).as(where).doesNotHaveDuplicates();
        for (int i = 0; i < cycle.size(); i++) {
          assertThat(waits.requires(cycle.get(i)))
              .as(where)
              .contains(cycle.get((i + 1) % cycle.size()));
        }
        int second = cycle.get(1 % cycle.size());
        assertThat(waits.physical(cycle.get(0))).as(where).contains(second);
        assertThat(second).as(where).isGreaterThanOrEqualTo(cycle.get(0));
      }
      for (int i = 0; i < cycles.size(); i++) {
        for (int j = 0; j < i; j++) {
          int a = cycles.get(i).get(0);
          int b = cycles.get(j).get(0);
          assertThat(reach[a][b] && reach[b][a]).as(where + ": one cycle shown twice").isFalse();
        }
      }
    }
  }

  @Test
  void whatAStageReachesIsWhatBruteForceFinds() {
    long seed = 212;
    Random random = new Random(seed);
    for (int g = 0; g < GRAPHS / 10; g++) {
      Waits waits = random(random);
      boolean[][] reach = closure(waits);
      for (int i = 0; i < waits.stages(); i++) {
        for (int j = 0; j < waits.stages(); j++) {
          assertThat(waits.reaches(i, j))
              .as("seed " + seed + ", graph " + g + ", " + i + " to " + j)
              .isEqualTo(reach[i][j]);
        }
      }
    }
  }
}
