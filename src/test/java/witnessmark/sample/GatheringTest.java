package witnessmark.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import witnessmark.desk.Assign;
import witnessmark.desk.CloseJob;
import witnessmark.desk.Dispose;
import witnessmark.entry.Disposition;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.pipeline.Bench;
import witnessmark.torque.TorqueUnit;
import witnessmark.torque.Verdict;

/** What is taken for a value of the process, on real decisions. */
class GatheringTest {
  private static Question group(String step) {
    return question(Optional.empty(), Optional.of(step), Optional.empty());
  }

  private static Question question(
      Optional<String> fastener, Optional<String> group, Optional<String> wrench) {
    Optional<String> any = Optional.empty();
    return new Question(
        fastener, group, wrench, any, any, any, any, Optional.empty(), Optional.empty());
  }

  private static Gathered gathered(Bench bench, Question question) {
    Gathering gathering = new Gathering(question);
    for (String kind : Gathering.KINDS) {
      for (int n = 0; n < bench.log().size(); n++) {
        Entry entry = bench.log().get(n);
        if (new String(EntryJson.bytes(entry)).contains("\"kind\":\"" + kind + "\"")) {
          gathering.take(n, entry);
        }
      }
    }
    return gathering.result();
  }

  private static Study only(Bench bench, Question question) {
    Gathered gathered = gathered(bench, question);
    assertThat(gathered.studies()).hasSize(1);
    return gathered.studies().get(0);
  }

  private static List<String> readings(Study study) {
    return study.values().stream().map(Value::reading).toList();
  }

  @Test
  void theCreditedReadingOfEachFastenerIsAValue() {
    Bench bench = Bench.on(Bench.group(3));
    bench.hit("49.1 N.m");
    bench.hit("50.2 N.m");
    bench.hit("51.3 N.m");
    Study study = only(bench, group("a"));
    assertThat(readings(study)).containsExactly("49.1 N.m", "50.2 N.m", "51.3 N.m");
    assertThat(study.title()).isEqualTo("P-1 revision A, a, final pass");
    assertThat(study.band().toString()).isEqualTo("45 to 55 N.m");
    assertThat(study.values().get(0).fastener()).isEqualTo("a/1");
    assertThat(study.values().get(0).unit()).isEqualTo("ATR-26-0147");
    assertThat(study.omitted()).isEmpty();
    assertThat(study.tries().firstPass().orElseThrow().count()).isEqualTo(3);
  }

  @Test
  void aFailedTryIsCountedAndIsNoValue() {
    Bench bench = Bench.on(Bench.group(2));
    bench.hit("40 N.m");
    bench.hit("50 N.m");
    bench.hit("51 N.m");
    Study study = only(bench, group("a"));
    assertThat(readings(study)).containsExactly("50 N.m", "51 N.m");
    assertThat(study.omitted()).isEqualTo(Map.of(Omission.NOT_ACCEPTED, 1));
    assertThat(study.tries().all()).isEqualTo(3);
    assertThat(study.tries().share(Verdict.UNDER_TORQUE).orElseThrow().count()).isEqualTo(1);
    assertThat(study.tries().firsts()).isEqualTo(2);
    assertThat(study.tries().firstsAccepted()).isEqualTo(1);
  }

  @Test
  void aSecondHitIsNeitherTryNorValue() {
    Bench bench = Bench.on(Bench.group(2));
    bench.hitOn("a/1", "50 N.m");
    bench.hitOn("a/1", "52 N.m");
    Study study = only(bench, group("a"));
    assertThat(readings(study)).containsExactly("50 N.m");
    assertThat(study.omitted()).isEqualTo(Map.of(Omission.HIT_AGAIN, 1));
    assertThat(study.tries().all()).isEqualTo(1);
  }

  @Test
  void whatWasUndoneAndDoneAgainCountsOnce() {
    Bench bench = Bench.on(Bench.group(2));
    bench.hitOn("a/1", "50 N.m");
    bench.loosen("a/1");
    bench.hitOn("a/1", "51 N.m");
    Study study = only(bench, group("a"));
    assertThat(readings(study)).containsExactly("51 N.m");
    assertThat(study.omitted()).isEqualTo(Map.of(Omission.LOOSENED, 1, Omission.DONE_AGAIN, 1));
  }

  @Test
  void whatWasUndoneAndNotDoneAgainIsNoValue() {
    Bench bench = Bench.on(Bench.group(2));
    bench.hitOn("a/1", "50 N.m");
    bench.loosen("a/1");
    Study study = only(bench, group("a"));
    assertThat(study.values()).isEmpty();
    assertThat(study.omitted()).isEqualTo(Map.of(Omission.LOOSENED, 1, Omission.UNDONE, 1));
  }

  @Test
  void whatIsReplacedCountsByItsReplacement() {
    Bench bench = Bench.on(Bench.group(1));
    bench.hitOn("a/1", "60 N.m");
    bench.person(
        new Dispose(
            bench.jobName(), "a/1", Disposition.REPLACE, "badge-07", Optional.empty(), "new bolt"));
    bench.hitOn("a/1", "50 N.m");
    Study study = only(bench, group("a"));
    assertThat(readings(study)).containsExactly("50 N.m");
    assertThat(study.tries().share(Verdict.OVER_TORQUE).orElseThrow().count()).isEqualTo(1);
    assertThat(study.tries().firstsAccepted()).isZero();
  }

  @Test
  void theNewestDecisionCounts() {
    Bench bench = Bench.on(Bench.group(1) + Bench.step("b", 1, "after = []"));
    Entry.TorqueTaken taken = bench.hit("50 N.m");
    long asks = bench.size() - 1;
    assertThat(gathered(bench, group("b")).studies()).isEmpty();
    bench.person(
        new Assign(
            asks, taken, bench.jobName(), Optional.of("b/1"), "badge-07", "it was that one"));
    Study study = only(bench, group("b"));
    assertThat(readings(study)).containsExactly("50 N.m");
    assertThat(gathered(bench, group("a")).studies()).isEmpty();
  }

  @Test
  void aReadingInAnotherUnitIsConverted() {
    Bench bench = Bench.on(Bench.group(1));
    bench.hit("36.9 lbf.ft");
    Study study = only(bench, group("a"));
    assertThat(study.unit()).isEqualTo(TorqueUnit.NEWTON_METRE);
    assertThat(study.converted()).isEqualTo(1);
    // 36.9 * 1.3558179483314004
    assertThat(study.values().get(0).number()).isCloseTo(50.02968229342867, within(1e-12));
  }

  @Test
  void passesAreNotMixed() {
    String passes =
        """
        [[step.pass]]
        name = "snug"
        torque = "25 N.m"
        tolerance = "10 %"
        [[step.pass]]
        name = "final"
        torque = "50 N.m"
        tolerance = "10 %"
        """;
    Bench bench = Bench.on(Bench.group(1, passes));
    bench.hit("25 N.m");
    bench.hit("50 N.m");
    Gathered gathered = gathered(bench, group("a"));
    assertThat(gathered.studies()).hasSize(1);
    assertThat(readings(gathered.studies().get(0))).containsExactly("50 N.m");
    assertThat(gathered.beside()).isEqualTo(Map.of(Omission.ANOTHER_PASS, 1));
  }

  @Test
  void revisionsAreJoinedWhereTheBandIsTheSameAndLaidApartWhereItIsNot() {
    Bench bench = Bench.on(Bench.group(1));
    bench.hit("50 N.m");
    bench.person(new CloseJob(bench.jobName(), Optional.of("badge-07")));
    bench.release(Bench.group(1, "note = \"new\"").replace("\"A\"", "\"B\""));
    bench.open("ATR-26-0148");
    bench.hit("51 N.m");
    bench.person(new CloseJob(bench.jobName(), Optional.of("badge-07")));
    bench.release(Bench.group(1).replace("\"A\"", "\"C\"").replace("50 N.m", "60 N.m"));
    bench.open("ATR-26-0149");
    bench.hit("60 N.m");
    List<Study> studies = gathered(bench, group("a")).studies();
    assertThat(studies).hasSize(2);
    assertThat(studies.get(0).revisions()).containsExactly("A", "B");
    assertThat(readings(studies.get(0))).containsExactly("50 N.m", "51 N.m");
    assertThat(studies.get(1).revisions()).containsExactly("C");
    assertThat(studies.get(1).band().toString()).isEqualTo("54 to 66 N.m");
  }

  @Test
  void aWrenchIsAskedForOverAllGroups() {
    Bench bench = Bench.on(Bench.group(2));
    bench.hit("TW-1", "50 N.m", "", "");
    bench.hit("TW-2", "51 N.m", "", "");
    bench.hit("TW-1", "52 N.m", "", "nowhere/1");
    Gathered gathered =
        gathered(bench, question(Optional.empty(), Optional.empty(), Optional.of("TW-1")));
    assertThat(readings(gathered.studies().get(0))).containsExactly("50 N.m");
    assertThat(gathered.beside()).isEqualTo(Map.of(Omission.NOWHERE, 1));
  }

  @Test
  void aLimitOfNothingIsNone() {
    Bench bench =
        Bench.on(
            Bench.group(1, "[[step.pass]]\nname = \"final\"\nmin = \"0 N.m\"\nmax = \"50 N.m\""));
    bench.hit("25 N.m");
    Study study = only(bench, group("a"));
    assertThat(study.limits().lower()).isEmpty();
    assertThat(study.limits().upper()).hasValue(50);
  }

  @Test
  void somethingMustBeAskedFor() {
    assertThatThrownBy(() -> question(Optional.empty(), Optional.empty(), Optional.empty()))
        .hasMessage("name what to look at: --fastener, --group, --wrench or --operator");
    Optional<String> any = Optional.empty();
    Optional<Instant> noon = Optional.of(Instant.parse("2026-11-25T12:00:00Z"));
    assertThatThrownBy(
            () -> new Question(any, Optional.of("a"), any, any, any, any, any, noon, noon))
        .hasMessageContaining("nothing lies between");
  }
}
