package witnessmark.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import witnessmark.desk.EnrolOperator;
import witnessmark.entry.Effect;
import witnessmark.entry.Entry;
import witnessmark.entry.Meaning;
import witnessmark.entry.Reason;
import witnessmark.job.JobState;

/** Benches, wrenches and people that are shared. */
class SharedBenchTest {
  private static final String PROCEDURE =
      Bench.group(2)
          .replace("title = \"Test\"\n", "title = \"Test\"\nunit-pattern = \"ATR-[0-9]+\"\n");

  @Test
  void aWrenchLentToAnotherStationCountsForTheJobThere() {
    Bench bench = Bench.without(PROCEDURE);
    bench.person(new EnrolOperator("badge-11", "bench 2", Optional.empty()));
    bench.scanned("bench-1", "badge-07");
    bench.scanned("bench-2", "badge-11");
    bench.scanned("bench-1", "ATR-1");
    bench.scanned("bench-2", "ATR-2");
    List<Entry.TorqueTaken> taken = new ArrayList<>();
    for (String station : List.of("bench-1", "bench-2", "bench-2", "bench-1")) {
      taken.add(bench.hitAt(station, "TW-1", "50 N.m"));
    }
    assertThat(taken)
        .extracting(t -> t.job().orElseThrow() + " " + t.judged().fastener().orElseThrow())
        .containsExactly("J-11 a/1", "J-13 a/1", "J-13 a/2", "J-11 a/2");
    assertThat(taken)
        .extracting(t -> t.operator().orElseThrow())
        .containsExactly("badge-07", "badge-11", "badge-11", "badge-07");
    assertThat(bench.scanned("bench-1", "wm:close").meaning()).isEqualTo(Meaning.CLOSE);
    assertThat(bench.scanned("bench-2", "wm:close").meaning()).isEqualTo(Meaning.CLOSE);
  }

  @Test
  void aPositionScannedAtOneStationNamesNothingAtAnother() {
    Bench bench =
        Bench.without(PROCEDURE.replace("fasteners = 2", "fasteners = 2\norder = \"any\""));
    bench.scanned("bench-1", "ATR-1");
    bench.scanned("bench-2", "ATR-2");
    bench.scanned("bench-1", "a/2");
    assertThat(bench.hitAt("bench-2", "TW-1", "50 N.m").judged().fastener()).contains("a/1");
    assertThat(bench.hitAt("bench-1", "TW-1", "50 N.m").judged().fastener()).contains("a/2");
  }

  @Test
  void twoPeopleWithFourWrenchesDoOneJob() {
    StringBuilder steps = new StringBuilder(Bench.head());
    for (int i = 1; i <= 4; i++) {
      steps.append(
          Bench.step("g" + i, 2, "after = []", "wrenches = [\"TW-" + i + "\"]", "order = \"any\""));
    }
    Bench bench = Bench.on(steps.toString());
    bench.person(new EnrolOperator("badge-11", "second", Optional.empty()));
    bench.person(Bench.wrench("TW-3"));
    bench.person(Bench.wrench("TW-4"));
    bench.scanned("badge-07");
    List<Entry.TorqueTaken> taken = new ArrayList<>();
    for (int wrench : new int[] {1, 4, 2, 3}) {
      taken.add(bench.hit("TW-" + wrench, "50 N.m", "", ""));
    }
    bench.scanned("badge-11");
    bench.scanned("g3/1");
    for (int wrench : new int[] {3, 1, 2, 4}) {
      taken.add(bench.hit("TW-" + wrench, "50 N.m", "", ""));
    }
    assertThat(taken)
        .extracting(t -> t.operator().orElseThrow() + " " + t.judged().fastener().orElseThrow())
        .containsExactly(
            "badge-07 g1/1",
            "badge-07 g4/1",
            "badge-07 g2/1",
            "badge-07 g3/1",
            "badge-11 g3/1",
            "badge-11 g1/2",
            "badge-11 g2/2",
            "badge-11 g4/2");
    // g3/1 was counted before and is named now: a second hit that the log tells as one
    assertThat(taken.get(4).judged().reason()).isEqualTo(Reason.HIT_AGAIN);
    assertThat(taken.get(4).judged().effect()).isNotEqualTo(Effect.CREDITED);
    JobState job = bench.job();
    assertThat(job.complete()).isFalse();
    assertThat(bench.hit("TW-3", "50 N.m", "", "").judged().fastener()).contains("g3/2");
    assertThat(bench.job().complete()).isTrue();
    assertThat(bench.scanned("wm:close").meaning()).isEqualTo(Meaning.CLOSE);
    assertThat(bench.log().get(bench.log().size() - 1))
        .isInstanceOfSatisfying(
            Entry.JobClosed.class, c -> assertThat(c.by()).contains("badge-11"));
  }
}
