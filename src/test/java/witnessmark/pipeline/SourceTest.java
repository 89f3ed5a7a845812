package witnessmark.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import witnessmark.desk.Assign;
import witnessmark.desk.BindWrench;
import witnessmark.desk.EnrolWrench;
import witnessmark.entry.Effect;
import witnessmark.entry.Entry;
import witnessmark.entry.Objection;
import witnessmark.entry.Source;
import witnessmark.entry.Timing;
import witnessmark.torque.Direction;
import witnessmark.torque.TorqueEvent;

/** A wrench that may report from some links only. */
class SourceTest {
  private static final String BROKER = "mqtt:shop-broker:witnessmark/v1/bench-1/torque";
  private static final String CABLE = "serial:bench-1-cable";
  private static final String BY = "badge-07";

  private final Bench bench = Bench.on(Bench.group(4));

  private void bind(Source... sources) {
    bench.person(new BindWrench("TW-1", List.of(sources), BY));
  }

  private static Source source(String link, String... station) {
    return new Source(link, List.of(station).stream().findFirst());
  }

  private Entry.TorqueTaken from(String source) {
    return bench.hitFrom(source, Bench.STATION, "TW-1", "50 N.m");
  }

  private static void foreign(Entry.TorqueTaken taken) {
    assertThat(taken.judged().objections()).containsExactly(Objection.NOT_FROM_ITS_SOURCE);
    assertThat(taken.judged().effect()).isEqualTo(Effect.AGAIN);
    assertThat(taken.judged().text())
        .contains(
            "TW-1 does not report by this way: use it where it belongs, or ask quality"
                + " (wrench bind).");
  }

  private static void credited(Entry.TorqueTaken taken) {
    assertThat(taken.judged().objections()).isEmpty();
    assertThat(taken.judged().effect()).isEqualTo(Effect.CREDITED);
  }

  @Test
  void alsoWhereItLandsNowhereItIsSaid() {
    bind(source("bench-1-cable"));
    Entry.TorqueTaken taken = bench.hitFrom(BROKER, "bench-9", "TW-1", "50 N.m");
    assertThat(taken.judged().objections()).containsExactly(Objection.NOT_FROM_ITS_SOURCE);
    assertThat(taken.judged().text()).contains("TW-1 does not report by this way");
    assertThat(bench.hitFrom(CABLE, "bench-9", "TW-1", "50 N.m").judged().objections()).isEmpty();
  }

  @Test
  void aWrenchThatNobodyBoundReportsFromAnywhere() {
    credited(from(BROKER));
    credited(from(CABLE));
    credited(from("anything"));
  }

  @Test
  void aBoundWrenchIsCreditedFromItsOwnLinkOnly() {
    bind(source("bench-1-cable"));
    foreign(from(BROKER));
    credited(from(CABLE));
    foreign(from("serial:bench-1-cable-2"));
    foreign(from("mqtt:bench-1-cable-2:bench-1-cable"));
    assertThat(bench.job().condition(0).done()).isEqualTo(1);
    assertThat(bench.job().condition(1).done()).isZero();
    credited(bench.hitFrom(BROKER, Bench.STATION, "TW-2", "50 N.m"));
  }

  @Test
  void oneOfSeveralSourcesIsEnough() {
    bind(source("bench-1-cable"), source("shop-broker"));
    credited(from(BROKER));
    credited(from(CABLE));
  }

  @Test
  void aStationOfALinkKeepsOtherStationsOut() {
    bind(source("shop-broker", "bench-2"));
    foreign(from(BROKER));
    bind(source("shop-broker", "bench-1"));
    credited(from(BROKER));
  }

  @Test
  void aReadingTooStrongIsNotOverlookedWhereverItComesFrom() {
    bind(source("bench-1-cable"));
    Entry.TorqueTaken taken = bench.hitFrom(BROKER, Bench.STATION, "TW-1", "70 N.m");
    assertThat(taken.judged().objections()).containsExactly(Objection.NOT_FROM_ITS_SOURCE);
    assertThat(taken.judged().effect()).isEqualTo(Effect.NONCONFORMING);
  }

  @Test
  void aReadingIsHeldAgainstWhatWasInForceWhenItCame() {
    bind(source("bench-1-cable"));
    Entry.TorqueTaken taken = from(BROKER);
    foreign(taken);
    bind();
    credited(from(BROKER));
    assertThat(bench.shop().fromItsSource(taken)).isFalse();
    assertThat(bench.replayed().wrenches()).isEqualTo(bench.shop().wrenches());
  }

  @Test
  void whoSpeaksInItsNameElsewhereCannotUseUpItsNumbers() {
    bind(source("bench-1-cable"));
    TorqueEvent genuine = bench.event("TW-1", "50 N.m", "", Direction.CW, "");
    Outcome forged = bench.takeFrom(BROKER, genuine);
    foreign((Entry.TorqueTaken) forged.entries().get(0));
    assertThat(bench.takeFrom(BROKER, genuine).repeat()).isTrue();

    Entry.TorqueTaken taken = (Entry.TorqueTaken) bench.takeFrom(CABLE, genuine).entries().get(0);
    credited(taken);
    assertThat(taken.timing().counter()).isEmpty();
    assertThat(bench.takeFrom(CABLE, genuine).repeat()).isTrue();
    assertThat(bench.takeFrom(BROKER, genuine).repeat()).isTrue();
    assertThat(bench.job().condition(0).done()).isEqualTo(1);
  }

  @Test
  void whoSpeaksInItsNameElsewhereTellsNothingOfItsClockAndCounter() {
    bind(source("bench-1-cable"));
    credited(from(CABLE));
    TorqueEvent now = bench.event("TW-1", "50 N.m", "", Direction.CW, "");
    bench.takeFrom(
        BROKER,
        new TorqueEvent(
            "TW-1",
            OptionalLong.of(999_999),
            now.time().map(t -> t.plusSeconds(3600)),
            now.torque(),
            now.angle(),
            now.direction(),
            now.fastener(),
            now.operator()));
    Entry.TorqueTaken taken = from(CABLE);
    credited(taken);
    assertThat(taken.timing())
        .isEqualTo(
            new Timing(
                taken.event().time().orElseThrow(),
                "wrench",
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty()));
  }

  @Test
  void whatItsOwnChannelSentIsARepeatAlsoAfterItWasBoundAnew() {
    bind(source("bench-1-cable"));
    TorqueEvent event = bench.event("TW-1", "50 N.m", "", Direction.CW, "");
    bench.takeFrom(BROKER, event);
    bind();
    assertThat(bench.takeFrom(BROKER, event).repeat()).isTrue();
  }

  @Test
  void placingItByHandDoesNotMakeItGood() {
    bind(source("bench-1-cable"));
    bench.person(
        new witnessmark.desk.SuspendJob(bench.jobName(), Optional.empty(), Optional.empty()));
    Entry.TorqueTaken taken = from(BROKER);
    long n = bench.size() - 1;
    bench.person(
        new witnessmark.desk.ResumeJob(bench.jobName(), Optional.empty(), Optional.empty()));
    bench.person(new Assign(n, taken, bench.jobName(), Optional.of("a/1"), BY, "seen"));
    Entry.Assigned assigned = (Entry.Assigned) bench.log().get((int) bench.size() - 1);
    assertThat(assigned.judged().objections()).containsExactly(Objection.NOT_FROM_ITS_SOURCE);
    assertThat(bench.job().condition(0).done()).isZero();
  }

  @Test
  void aNewCalibrationLeavesTheBindingAsItIs() {
    bind(source("bench-1-cable"));
    EnrolWrench again = Bench.wrench("TW-1");
    bench.person(again);
    foreign(from(BROKER));
  }

  @Test
  void aSourceThatNoLinkCanHaveIsRefused() {
    assertThatThrownBy(() -> bind(source("shop:broker")))
        .hasMessage("link \"shop:broker\" is not allowed; use the name that the configuration has");
    assertThatThrownBy(() -> bind(source("shop-broker", "bench 1")))
        .hasMessageStartingWith("station \"bench 1\" is not allowed");
    assertThatThrownBy(() -> bind(source("a"), source("a")))
        .hasMessage("a source is named twice; name each once");
  }
}
