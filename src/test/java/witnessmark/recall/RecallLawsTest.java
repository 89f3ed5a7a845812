package witnessmark.recall;

import static java.util.stream.Collectors.toMap;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.entry.Entry;
import witnessmark.pipeline.Bench;
import witnessmark.pipeline.OnDisk;

/** A recall read from a real log is what the plainest recomputation gives. */
class RecallLawsTest {
  private static final int HISTORIES = Integer.getInteger("recall.count", 200);

  @TempDir private Path directory;

  @Test
  void everyJointIsJudgedAsByBruteForce() {
    Map<Outlook, Integer> seen = new EnumMap<>(Outlook.class);
    for (int seed = 1; seed <= HISTORIES; seed++) {
      Bench bench = Histories.of(new Random(seed));
      Recall recall = recall(seed, bench.log());
      BruteForce force = new BruteForce(bench.log());
      Map<Long, Outlook> expected = new TreeMap<>(force.outlooks());
      Map<Long, Outlook> actual =
          recall.joints().stream()
              .collect(toMap(j -> j.touch().entry(), Rejudged::outlook, (a, b) -> a, TreeMap::new));
      expected.keySet().stream()
          .filter(force::tooNear)
          .toList()
          .forEach(
              n -> {
                expected.remove(n);
                actual.remove(n);
              });
      assertThat(actual).as("seed " + seed).isEqualTo(expected);
      assertThat(recall.joints()).as("seed " + seed).isSortedAccordingTo(Rejudged.FIRST);
      actual.values().forEach(o -> seen.merge(o, 1, Integer::sum));
    }
    System.out.println("recall: joints by outlook " + seen);
    assertThat(seen).containsOnlyKeys(Outlook.values());
    assertThat(seen.values()).allMatch(n -> n >= HISTORIES / 10);
  }

  private Recall recall(int seed, List<Entry> log) {
    return OnDisk.read(
        directory.resolve("log-" + seed),
        log,
        reading -> {
          Survey survey = new Survey(reading, "TW-1");
          return survey.recall(survey.finding(OptionalLong.empty()).orElseThrow());
        });
  }
}
