package witnessmark.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import witnessmark.desk.AbandonJob;
import witnessmark.desk.Assign;
import witnessmark.desk.CloseJob;
import witnessmark.desk.OpenJob;
import witnessmark.desk.ResumeJob;
import witnessmark.desk.SuspendJob;
import witnessmark.entry.Effect;
import witnessmark.entry.Entry;
import witnessmark.entry.Reason;
import witnessmark.entry.Timing;
import witnessmark.job.History;
import witnessmark.torque.Direction;
import witnessmark.torque.Torque;
import witnessmark.torque.TorqueEvent;
import witnessmark.torque.Verdict;

/** Readings that come late, out of order, by odd clocks and by counters that begin anew. */
class LateTest {
  private static final Optional<String> BY = Optional.of("badge-07");

  /** Two on a by TW-1, then two on b by TW-2. */
  private static Bench twoGroups() {
    return Bench.on(
        Bench.group(2, "wrenches = [\"TW-1\"]")
            + Bench.step("b", 2, "wrenches = [\"TW-2\"]")
                .replace("torque = \"50 N.m\"", "torque = \"90 N.m\""));
  }

  private static TorqueEvent held(Bench bench, String wrench, String torque) {
    return bench.event(wrench, torque, "", Direction.CW, "");
  }

  private static Entry.TorqueTaken taken(Outcome outcome) {
    return (Entry.TorqueTaken) outcome.entries().get(0);
  }

  @Test
  void aLateBurstIsCreditedWhereItHappenedAndWhatCameMeanwhileIsReadAgain() {
    Bench bench = twoGroups();
    TorqueEvent first = held(bench, "TW-1", "50 N.m");
    TorqueEvent second = held(bench, "TW-1", "51 N.m");
    Entry.TorqueTaken ahead = bench.hit("TW-2", "90 N.m", "", "");
    assertThat(ahead.judged().effect()).isNotEqualTo(Effect.CREDITED);
    bench.hit("TW-2", "91 N.m", "", "");
    bench.rest(600);

    Outcome one = bench.takeStored(first);
    Outcome two = bench.takeStored(second);

    assertThat(taken(one).judged().fastener()).contains("a/1");
    assertThat(taken(one).timing().tardy()).isTrue();
    assertThat(taken(one).judged().text())
        .contains("It came 10 min late and stands where it happened");
    assertThat(taken(two).judged().fastener()).contains("a/2");
    assertThat(two.entries().subList(1, two.entries().size()))
        .extracting(
            e ->
                ((Entry.Reread) e).judged().fastener().orElse("")
                    + " "
                    + ((Entry.Reread) e).judged().effect())
        .containsExactly("b/1 CREDITED", "b/2 CREDITED");
    assertThat(bench.job().complete()).isTrue();
    assertThat(bench.replayed().jobs().get(bench.jobName()).complete()).isTrue();
  }

  @Test
  void aLateReadingGoesToTheJobThatWasOpenThenThoughItIsSuspended() {
    Bench bench = twoGroups();
    TorqueEvent late = held(bench, "TW-1", "50 N.m");
    bench.person(new SuspendJob(bench.jobName(), BY, Optional.empty()));
    bench.person(new OpenJob("P-1", Optional.empty(), "ATR-26-0148", Bench.STATION, BY));
    bench.rest(60);

    Entry.TorqueTaken entry = taken(bench.takeStored(late));

    assertThat(entry.job()).contains(bench.jobName());
    assertThat(bench.job().passesDone()).isEqualTo(1);
    assertThat(bench.shop().active(Bench.STATION).orElseThrow().passesDone()).isZero();
  }

  @Test
  void aLateReadingForAnEndedJobIsAFindingAndReopensNothing() {
    Bench bench = twoGroups();
    TorqueEvent late = held(bench, "TW-1", "50 N.m");
    bench.rest(60);
    bench.person(new AbandonJob(bench.jobName(), BY, "frame cracked"));
    bench.person(new OpenJob("P-1", Optional.empty(), "ATR-26-0148", Bench.STATION, BY));

    Entry.TorqueTaken entry = taken(bench.takeStored(late));

    assertThat(entry.judged().reason()).isEqualTo(Reason.LATE_FOR_ENDED_JOB);
    assertThat(entry.job()).contains(bench.jobName());
    assertThat(entry.judged().text()).contains("a late finding");
    assertThat(bench.shop().jobs()).doesNotContainKey(bench.jobName());
    assertThat(bench.shop().active(Bench.STATION).orElseThrow().passesDone()).isZero();
    assertThat(bench.replayed().size()).isEqualTo(bench.shop().size());
  }

  @Test
  void aReadingOfATimeWithoutAJobBelongsToNone() {
    Bench bench = twoGroups();
    TorqueEvent early = held(bench, "TW-1", "50 N.m");
    Bench later = twoGroups();
    later.rest(60);
    TorqueEvent before = at(early, Bench.START.minusSeconds(3600));
    assertThat(taken(later.takeStored(before)).judged().reason()).isEqualTo(Reason.NO_ACTIVE_JOB);
  }

  @Test
  void aSuspendedTimeIsNoTimeOfTheJob() {
    Bench bench = twoGroups();
    bench.person(new SuspendJob(bench.jobName(), BY, Optional.empty()));
    TorqueEvent between = held(bench, "TW-1", "50 N.m");
    bench.person(new ResumeJob(bench.jobName(), Optional.of(Bench.STATION), BY));
    bench.rest(60);
    assertThat(taken(bench.takeStored(between)).judged().reason()).isEqualTo(Reason.NO_ACTIVE_JOB);
  }

  @Test
  void aClockThatIsSlowIsCorrectedByWhatItsReadingsTell() {
    Bench bench = twoGroups();
    Entry.TorqueTaken first = taken(bench.take(slow(held(bench, "TW-1", "50 N.m"), 200)));
    assertThat(first.timing().clock()).isEqualTo("corrected");
    assertThat(first.timing().offset().orElseThrow().text()).isEqualTo("200.000");
    assertThat(first.moment()).isEqualTo(first.at());
    TorqueEvent second = slow(held(bench, "TW-1", "50 N.m"), 200);
    Instant happened = bench.now();
    bench.rest(3600);
    Entry.TorqueTaken late = taken(bench.takeStored(second));
    assertThat(late.timing().tardy()).isTrue();
    assertThat(late.moment()).isEqualTo(happened);
    assertThat(late.judged().fastener()).contains("a/2");
  }

  @Test
  void aClockThatWasSetBackIsMeasuredAnew() {
    Bench bench = twoGroups();
    bench.take(held(bench, "TW-1", "40 N.m"));
    Timing timing = taken(bench.take(slow(held(bench, "TW-1", "50 N.m"), 7200))).timing();
    assertThat(timing.tardy()).isFalse();
    assertThat(timing.offset().orElseThrow().text()).isEqualTo("7200.000");
  }

  @Test
  void aTimeThatIsNotBelievedTeachesNothingOfTheClock() {
    Bench bench = twoGroups();
    TorqueEvent ahead =
        unnumbered(at(held(bench, "TW-1", "50 N.m"), Instant.parse("2031-01-01T00:00:00Z")));
    assertThat(taken(bench.take(ahead)).timing().clock()).isEqualTo("bridge");

    Entry.TorqueTaken next = taken(bench.take(unnumbered(held(bench, "TW-1", "51 N.m"))));

    assertThat(next.timing().clock()).isEqualTo("wrench");
    assertThat(next.timing().offset()).isEmpty();
    assertThat(next.timing().tardy()).isFalse();
  }

  @Test
  void aClockOf1970IsNotBelieved() {
    Bench bench = twoGroups();
    Entry.TorqueTaken entry =
        taken(bench.take(at(held(bench, "TW-1", "50 N.m"), Instant.parse("1970-01-01T00:00:07Z"))));
    assertThat(entry.timing().clock()).isEqualTo("bridge");
    assertThat(entry.judged().effect()).isEqualTo(Effect.CREDITED);
  }

  @Test
  void aCounterThatBeginsAnewIsSaidInTheEntry() {
    Bench bench = twoGroups();
    bench.take(numbered(held(bench, "TW-1", "40 N.m"), 900));
    Entry.TorqueTaken entry = taken(bench.take(numbered(held(bench, "TW-1", "50 N.m"), 1)));
    assertThat(entry.timing().counter()).contains("began-anew");
    assertThat(entry.judged().text()).endsWith("The wrench counts from low numbers again.");
    assertThat(entry.judged().effect()).isEqualTo(Effect.CREDITED);
  }

  @Test
  void aNumberUsedBeforeByAnotherReadingIsSaidAndTheReadingCounts() {
    Bench bench = twoGroups();
    bench.take(numbered(held(bench, "TW-1", "40 N.m"), 5));
    Entry.TorqueTaken entry = taken(bench.take(numbered(held(bench, "TW-1", "50 N.m"), 5)));
    assertThat(entry.timing().counter()).contains("used-before");
    assertThat(entry.judged().effect()).isEqualTo(Effect.CREDITED);
  }

  @Test
  void theSameNumberAndReadingAtAnotherTimeMayBeARepeatAndIsCreditedToNothing() {
    Bench bench = twoGroups();
    TorqueEvent first = held(bench, "TW-1", "50 N.m");
    bench.take(first);
    bench.rest(5);
    Entry.TorqueTaken again = taken(bench.take(at(first, bench.now())));
    assertThat(again.judged().reason()).isEqualTo(Reason.PERHAPS_REPEATED);
    assertThat(bench.job().passesDone()).isEqualTo(1);
  }

  @Test
  void aBurstThatRepeatsHalfOfWhatWasTakenAddsTheOtherHalfOnly() {
    Bench bench = twoGroups();
    TorqueEvent first = held(bench, "TW-1", "50 N.m");
    TorqueEvent second = held(bench, "TW-1", "50 N.m");
    bench.rest(60);
    bench.takeStored(first);
    long before = bench.size();
    assertThat(bench.takeStored(first).repeat()).isTrue();
    bench.takeStored(second);
    assertThat(bench.size()).isEqualTo(before + 1);
    assertThat(bench.job().passesDone()).isEqualTo(2);
  }

  @Test
  void aLateReadingDoesNotTakeTheScanOfAnother() {
    Bench bench = twoGroups();
    TorqueEvent late = held(bench, "TW-1", "50 N.m");
    bench.rest(60);
    bench.scan("a/2");
    assertThat(taken(bench.takeStored(late)).judged().fastener()).contains("a/1");
    assertThat(bench.job().named()).isEmpty();
  }

  @Test
  void whatAPersonAnswersLaterCountsFromWhereItHappened() {
    Bench bench = Bench.on(Bench.group(2) + Bench.step("b", 1, "after = []"));
    long question = bench.size();
    assertThat(bench.hit("50 N.m").judged().effect()).isEqualTo(Effect.ASKS);
    bench.hitOn("a/1", "50 N.m");
    Entry.TorqueTaken asked = (Entry.TorqueTaken) bench.log().get((int) question);
    bench.person(new Assign(question, asked, bench.jobName(), Optional.of("a/1"), "badge-07", "x"));

    Entry.Reread again = (Entry.Reread) bench.log().get((int) bench.size() - 1);
    assertThat(again.rereads()).isEqualTo(question + 1);
    assertThat(again.judged().reason()).isEqualTo(Reason.HIT_AGAIN);
    assertThat(again.judged().verdict()).contains(Verdict.IN_BAND);
    assertThat(again.judged().text()).startsWith("Read again because of entry " + again.because());
  }

  @Test
  void aJobClosesOnlyAfterWhatWasReadAgainIsSettled() {
    Bench bench = twoGroups();
    TorqueEvent over = held(bench, "TW-1", "70 N.m");
    for (String torque : List.of("50 N.m", "50 N.m")) {
      bench.hit("TW-1", torque, "", "");
    }
    bench.hit("TW-2", "90 N.m", "", "");
    bench.hit("TW-2", "90 N.m", "", "");
    assertThat(bench.job().complete()).isTrue();
    bench.rest(60);
    bench.takeStored(over);
    assertThat(bench.job().complete()).isFalse();
    assertThat(bench.job().nonconforming()).isNotEmpty();
    org.assertj.core.api.Assertions.assertThatThrownBy(
            () -> bench.person(new CloseJob(bench.jobName(), BY)))
        .isInstanceOf(witnessmark.desk.Declined.class);
  }

  @Test
  void historyTellsItsFactsInOrder() {
    Bench bench = twoGroups();
    TorqueEvent late = held(bench, "TW-1", "50 N.m");
    bench.hit("TW-1", "51 N.m", "", "");
    bench.rest(60);
    bench.takeStored(late);
    List<String> torques = new ArrayList<>();
    History.all(bench.job())
        .forEach(a -> torques.add(((Entry.TorqueTaken) a.entry()).event().torque().toString()));
    assertThat(torques).containsExactly("50 N.m", "51 N.m");
  }

  private static TorqueEvent slow(TorqueEvent e, long seconds) {
    return at(e, e.time().orElseThrow().minus(Duration.ofSeconds(seconds)));
  }

  private static TorqueEvent at(TorqueEvent e, Instant time) {
    return copy(e, e.number(), Optional.of(time), e.torque());
  }

  private static TorqueEvent numbered(TorqueEvent e, long number) {
    return copy(e, OptionalLong.of(number), e.time(), e.torque());
  }

  private static TorqueEvent unnumbered(TorqueEvent e) {
    return copy(e, OptionalLong.empty(), e.time(), e.torque());
  }

  private static TorqueEvent copy(
      TorqueEvent e, OptionalLong number, Optional<Instant> time, Torque torque) {
    return new TorqueEvent(
        e.wrench(), number, time, torque, e.angle(), e.direction(), e.fastener(), e.operator());
  }
}
