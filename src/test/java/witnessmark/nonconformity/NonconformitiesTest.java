package witnessmark.nonconformity;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.desk.AbandonJob;
import witnessmark.desk.Dispose;
import witnessmark.entry.Disposition;
import witnessmark.nonconformity.Nonconformity.State;
import witnessmark.pipeline.Bench;
import witnessmark.pipeline.OnDisk;
import witnessmark.procedure.Criticality;
import witnessmark.torque.Verdict;

/** The list of nonconformities as read from a real log. */
class NonconformitiesTest {
  @TempDir private Path directory;

  private final Bench bench =
      Bench.on(
          Bench.group(2, "order = \"any\"", "criticality = \"function\"")
              + Bench.step("b", 2, "order = \"any\"", "criticality = \"danger\""));

  private List<Nonconformity> list() {
    return OnDisk.read(directory.resolve("log"), bench.log(), Nonconformities::in);
  }

  private void dispose(String fastener, Disposition disposition) {
    bench.person(new Dispose(bench.jobName(), fastener, disposition, "badge-07", "new bolt"));
  }

  @Test
  void whatIsOpenStandsFirstAndTheMostCriticalOfIt() {
    bench.hitOn("a/1", "70 N.m");
    bench.hitOn("b/2", "71 N.m");
    bench.hitOn("a/2", "72 N.m");
    dispose("a/2", Disposition.REPLACE);
    assertThat(list())
        .extracting(Nonconformity::fastener, Nonconformity::state)
        .containsExactly(
            org.assertj.core.groups.Tuple.tuple("b/2", State.OPEN),
            org.assertj.core.groups.Tuple.tuple("a/1", State.OPEN),
            org.assertj.core.groups.Tuple.tuple("a/2", State.TO_BE_DONE));
  }

  @Test
  void aDecisionIsToldWithWhoAndWhyAndIsSettledOnceTheFastenerIsTightAgain() {
    bench.hitOn("a/1", "70 N.m");
    long entry = bench.size() - 1;
    bench.rest(3600);
    dispose("a/1", Disposition.REPLACE);
    bench.loosen("a/1");
    bench.hitOn("a/1", "50 N.m");
    assertThat(list())
        .singleElement()
        .satisfies(
            n -> {
              assertThat(n.entry()).isEqualTo(entry);
              assertThat(n.state()).isEqualTo(State.SETTLED);
              assertThat(n.verdict()).contains(Verdict.OVER_TORQUE);
              assertThat(n.criticality()).isEqualTo(Criticality.FUNCTION);
              assertThat(n.age(bench.now())).isEqualTo(Duration.ofSeconds(3605));
              assertThat(n.decisions())
                  .singleElement()
                  .satisfies(d -> assertThat(d.disposed().because()).isEqualTo("new bolt"));
            });
  }

  @Test
  void whatAnAbandonedJobLeftOpenIsNotForgotten() {
    bench.hitOn("a/1", "70 N.m");
    bench.person(new AbandonJob(bench.jobName(), Optional.empty(), "frame cracked"));
    assertThat(list())
        .singleElement()
        .satisfies(n -> assertThat(n.state()).isEqualTo(State.LEFT_OPEN));
  }

  @Test
  void aShopWithoutAnyHasAnEmptyList() {
    bench.hitOn("a/1", "50 N.m");
    assertThat(list()).isEmpty();
  }
}
