package witnessmark.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import witnessmark.desk.Assign;
import witnessmark.desk.CloseJob;
import witnessmark.desk.Declined;
import witnessmark.desk.Dispose;
import witnessmark.desk.EnrolWrench;
import witnessmark.entry.Disposition;
import witnessmark.entry.Effect;
import witnessmark.entry.Entry;
import witnessmark.entry.Objection;
import witnessmark.entry.Reason;
import witnessmark.torque.Direction;
import witnessmark.torque.Torque;
import witnessmark.torque.TorqueEvent;
import witnessmark.torque.Verdict;

class VerdictTest {
  @Test
  void aReadingExactlyOnALimitIsInBandWhateverItsUnit() {
    // 17 lbf.ft ± 10 % is 15.3 to 18.7 lbf.ft; in N.m those limits are
    // 20.744014609470426... and 25.353795633797185... exactly (from the SI definitions)
    String band = "[[step.pass]]\nname = \"final\"\ntorque = \"17 lbf.ft\"\ntolerance = \"10 %\"";
    assertThat(verdict(band, "15.3 lbf.ft")).contains(Verdict.IN_BAND);
    assertThat(verdict(band, "183.6 lbf.in")).contains(Verdict.IN_BAND);
    assertThat(verdict(band, "183.5 lbf.in")).contains(Verdict.UNDER_TORQUE);
    assertThat(verdict(band, "20.744014609470425 N.m")).contains(Verdict.UNDER_TORQUE);
    assertThat(verdict(band, "20.744014609470427 N.m")).contains(Verdict.IN_BAND);
    assertThat(verdict(band, "18.7 lbf.ft")).contains(Verdict.IN_BAND);
    assertThat(verdict(band, "224.4 lbf.in")).contains(Verdict.IN_BAND);
    assertThat(verdict(band, "224.5 lbf.in")).contains(Verdict.OVER_TORQUE);
  }

  private static Optional<Verdict> verdict(String band, String torque) {
    return Bench.on(Bench.group(1, band)).hit(torque).judged().verdict();
  }

  @Test
  void anUnderTorqueLeavesTheSameFastenerExpected() {
    Bench bench = Bench.on(Bench.group(2));
    Entry.TorqueTaken under = bench.hit("44.9 N.m");
    assertThat(under.judged().effect()).isEqualTo(Effect.AGAIN);
    assertThat(under.judged().text())
        .isEqualTo(
            "a/1 (final pass): 44.9 N.m is below the band of 45 to 55 N.m."
                + " Not accepted: tighten it again. It was the one fastener due next.");
    assertThat(bench.hit("45 N.m").judged().fastener()).contains("a/1");
  }

  @Test
  void anOverTorqueWaitsForADispositionAndTheJobCannotCloseAroundIt() {
    Bench bench = Bench.on(Bench.group(2));
    assertThat(bench.hit("55.1 N.m").judged().effect()).isEqualTo(Effect.NONCONFORMING);
    assertThat(bench.hit("50 N.m").judged().reason()).isEqualTo(Reason.JOB_WAITS);
    assertThatThrownBy(() -> bench.person(new CloseJob(bench.jobName(), Optional.empty())))
        .isInstanceOf(Declined.class)
        .hasMessageContaining("a/1 is nonconforming since entry 6: witnessmark dispose J-5 a/1 ");
  }

  @Test
  void reworkAndReplaceMakeTheFastenerPendingAgain() {
    for (Disposition d : List.of(Disposition.REWORK, Disposition.REPLACE)) {
      Bench bench = Bench.on(Bench.group(1));
      bench.hit("60 N.m");
      dispose(bench, d);
      Entry.TorqueTaken loosened = bench.loosen("");
      assertThat(loosened.judged().reason()).isEqualTo(Reason.LOOSENED_FOR_REWORK);
      assertThat(bench.hit("50 N.m").judged().effect()).isEqualTo(Effect.CREDITED);
      assertThat(bench.job().complete()).isTrue();
    }
  }

  @Test
  void useAsIsUnderConcessionAcceptsTheFastener() {
    Bench bench = Bench.on(Bench.group(1));
    bench.hit("60 N.m");
    dispose(bench, Disposition.USE_AS_IS);
    assertThat(bench.job().complete()).isTrue();
  }

  @Test
  void aScrappedFastenerLeavesOnlyAbandoning() {
    Bench bench = Bench.on(Bench.group(1));
    bench.hit("60 N.m");
    dispose(bench, Disposition.SCRAP);
    assertThatThrownBy(() -> dispose(bench, Disposition.REWORK))
        .hasMessage("Fastener a/1 was scrapped: abandon the job.");
    assertThat(bench.job().complete()).isFalse();
  }

  private static void dispose(Bench bench, Disposition d) {
    bench.person(new Dispose(bench.jobName(), "a/1", d, "badge-07", "decided"));
  }

  @Test
  void anAngleBelowItsWindowMeansAgainAndAboveItNonconforming() {
    Bench bench = Bench.on(Bench.group(1, "angle-min = \"20\"", "angle-max = \"70\""));
    assertThat(bench.hit("TW-1", "50 N.m", "4.5", "").judged().verdict())
        .contains(Verdict.ANGLE_LOW);
    Entry.TorqueTaken missing = bench.hit("50 N.m");
    assertThat(missing.judged().objections()).containsExactly(Objection.ANGLE_MISSING);
    assertThat(missing.judged().effect()).isEqualTo(Effect.AGAIN);
    Entry.TorqueTaken high = bench.hit("TW-1", "50 N.m", "70.1", "");
    assertThat(high.judged().verdict()).contains(Verdict.ANGLE_HIGH);
    assertThat(high.judged().effect()).isEqualTo(Effect.NONCONFORMING);
  }

  @Test
  void afterAnUnderTorqueTheAngleCountsOverAllPulls() {
    Bench bench = Bench.on(Bench.group(1, "angle-min = \"20\"", "angle-max = \"70\""));
    bench.hit("TW-1", "40 N.m", "31.5", "");
    Entry.TorqueTaken rest = bench.hit("TW-1", "50 N.m", "9.0", "");
    assertThat(rest.judged().effect()).isEqualTo(Effect.CREDITED);
    assertThat(rest.judged().angleTotal()).contains(witnessmark.torque.Angle.of("40.5"));
  }

  @Test
  void hittingATightFastenerAgainAndAgainNeverAddsUpToAFreshOne() {
    Bench bench = Bench.on(Bench.group(1, "angle-min = \"20\"", "angle-max = \"70\""));
    for (int i = 0; i < 30; i++) {
      assertThat(bench.hit("TW-1", "50 N.m", "2.0", "").judged().verdict())
          .contains(Verdict.ANGLE_LOW);
    }
    assertThat(bench.job().passesDone()).isZero();
  }

  @Test
  void aWrenchWithoutStandingIsRecordedAndNeverAccepts() {
    Bench bench = Bench.on(Bench.group(1, "wrenches = [\"TW-1\", \"TW-9\"]"));
    assertThat(objections(bench.hit("TW-9", "50 N.m", "", "")))
        .containsExactly(Objection.WRENCH_NOT_ENROLLED);
    assertThat(objections(bench.hit("TW-2", "50 N.m", "", "")))
        .containsExactly(Objection.WRENCH_NOT_FOR_THIS_STEP);
    EnrolWrench small = Bench.wrench("TW-1");
    bench.person(
        new EnrolWrench(
            "TW-1",
            Torque.parse("4 N.m"),
            Torque.parse("49 N.m"),
            small.calibrated(),
            Bench.START.plus(Duration.ofSeconds(1)),
            Optional.empty(),
            Optional.empty(),
            Optional.empty()));
    assertThat(objections(bench.hit("50 N.m")))
        .containsExactly(Objection.CALIBRATION_NOT_IN_FORCE, Objection.OUTSIDE_WRENCH_RANGE);
    assertThat(bench.job().passesDone()).isZero();
  }

  private static List<Objection> objections(Entry.TorqueTaken taken) {
    assertThat(taken.judged().effect()).isEqualTo(Effect.AGAIN);
    return taken.judged().objections();
  }

  @Test
  void anOverTorqueCountsEvenFromAWrenchWithoutStanding() {
    Bench bench = Bench.on(Bench.group(1));
    assertThat(bench.hit("TW-9", "90 N.m", "", "").judged().effect())
        .isEqualTo(Effect.NONCONFORMING);
  }

  @Test
  void aTightFastenerHitAgainStandsUnlessTheHitIsOutOfBand() {
    Bench bench = Bench.on(Bench.group(2));
    bench.hit("50 N.m");
    assertThat(bench.hitOn("a/1", "52 N.m").judged().effect()).isEqualTo(Effect.RECHECKED);
    assertThat(bench.hitOn("a/1", "30 N.m").judged().effect()).isEqualTo(Effect.AGAIN);
    assertThat(bench.hit("50 N.m").judged().fastener()).contains("a/1");
    assertThat(bench.hitOn("a/1", "80 N.m").judged().effect()).isEqualTo(Effect.NONCONFORMING);
  }

  @Test
  void looseningUndoesTheFastenerAndWhatPhysicallyDependsOnIt() {
    Bench bench =
        Bench.on(
            Bench.group(2)
                + Bench.step("b", 1, "after = [\"a\"]")
                + Bench.step("c", 1)
                + "[[step]]\nid = \"wire\"\nkind = \"attest\"\ntitle = \"Wire\"\n"
                + "statement = \"Fitted.\"\nafter = [\"b\", \"c\"]\n");
    for (int i = 0; i < 4; i++) {
      bench.hit("50 N.m");
    }
    bench.person(new witnessmark.desk.Attest(bench.jobName(), "wire", "badge-07"));
    Entry.TorqueTaken loosened = bench.loosen("a/2");
    assertThat(loosened.judged().undoes()).containsExactly("b:final", "wire");
    assertThat(bench.job().condition(0).done()).as("a/1").isEqualTo(1);
    assertThat(bench.job().condition(1).done()).as("a/2").isZero();
    assertThat(bench.job().condition(2).done()).as("b/1").isZero();
    assertThat(bench.job().condition(3).done()).as("c/1, mere sequence").isEqualTo(1);
    assertThat(bench.job().gates()).isEmpty();
  }

  @Test
  void aLooseningWithoutPositionAsksWhenSeveralFastenersAreTight() {
    Bench bench = Bench.on(Bench.group(3));
    bench.hit("50 N.m");
    bench.hit("50 N.m");
    Entry.TorqueTaken asks = bench.loosen("");
    long n = bench.size() - 1;
    assertThat(asks.judged().effect()).isEqualTo(Effect.ASKS);
    assertThat(asks.judged().alternatives()).containsExactly("a/1", "a/2");
    bench.hit("50 N.m");
    assertThat(bench.job().complete()).isFalse();
    bench.person(new Assign(n, asks, bench.jobName(), Optional.of("a/1"), "badge-07", "I saw it"));
    assertThat(bench.job().condition(0).done()).as("what came next is read again").isOne();
    assertThat(bench.hit("50 N.m").judged().fastener()).contains("a/3");
    assertThat(bench.job().complete()).isTrue();
    assertThatThrownBy(
            () ->
                bench.person(
                    new Assign(n, asks, bench.jobName(), Optional.of("a/2"), "badge-07", "no")))
        .hasMessage("Entry " + n + " was assigned or set aside already.");
  }

  @Test
  void aRepeatIsCountedAndChangesNothing() {
    Bench bench = Bench.on(Bench.group(2));
    TorqueEvent event = bench.event("TW-1", "50 N.m", "", Direction.CW, "");
    bench.take(event);
    long size = bench.size();
    assertThat(bench.take(event).repeat()).isTrue();
    assertThat(bench.size()).isEqualTo(size);
  }

  @Test
  void aPossibleRepeatWithoutNumberIsRecordedAndNotCredited() {
    Bench bench = Bench.on(Bench.group(2));
    TorqueEvent numbered = bench.event("TW-1", "50 N.m", "", Direction.CW, "");
    TorqueEvent event =
        new TorqueEvent(
            "TW-1",
            OptionalLong.empty(),
            numbered.time(),
            numbered.torque(),
            Optional.empty(),
            Direction.CW,
            Optional.empty(),
            Optional.empty());
    Entry.TorqueTaken first = (Entry.TorqueTaken) bench.take(event).entries().get(0);
    assertThat(first.judged().text())
        .endsWith(" The wrench sent no event number, so a repeat could not be told for sure.");
    Outcome again = bench.take(event);
    assertThat(((Entry.TorqueTaken) again.entries().get(0)).judged().reason())
        .isEqualTo(Reason.PERHAPS_REPEATED);
    assertThat(bench.job().passesDone()).isEqualTo(1);
  }

  @Test
  void anEventWithoutActiveJobIsRecordedWithItsReason() {
    Bench bench = Bench.on(Bench.group(1));
    bench.person(
        new witnessmark.desk.SuspendJob(bench.jobName(), Optional.empty(), Optional.empty()));
    Entry.TorqueTaken taken = bench.hit("50 N.m");
    assertThat(taken.judged().reason()).isEqualTo(Reason.NO_ACTIVE_JOB);
    assertThat(taken.job()).isEmpty();
  }

  @Test
  void aScanNamesThePositionOfTheNextReadingOnly() {
    Bench bench = Bench.on(Bench.group(3, "order = \"any\""));
    bench.scan("a/3");
    assertThat(bench.hit("50 N.m").judged().reason()).isEqualTo(Reason.NAMED_BY_SCAN);
    assertThat(bench.job().condition(2).done()).isEqualTo(1);
    assertThat(bench.hit("50 N.m").judged().reason()).isEqualTo(Reason.COUNTED_IN_GROUP);
  }

  @Test
  void aScannedBadgeNamesWhoWorksAtTheStation() {
    Bench bench = Bench.on(Bench.group(1));
    bench.scan("badge-07");
    assertThat(bench.hit("50 N.m").operator()).contains("badge-07");
  }

  @Test
  void aClockThatIsPlainlyWrongDoesNotDate() {
    Bench bench = Bench.on(Bench.group(1));
    TorqueEvent event = bench.event("TW-1", "50 N.m", "", Direction.CW, "");
    TorqueEvent old =
        new TorqueEvent(
            event.wrench(),
            event.number(),
            Optional.of(java.time.Instant.EPOCH),
            event.torque(),
            event.angle(),
            event.direction(),
            event.fastener(),
            event.operator());
    Entry.TorqueTaken taken = (Entry.TorqueTaken) bench.take(old).entries().get(0);
    assertThat(taken.timing().clock()).isEqualTo("bridge");
    assertThat(taken.moment()).isEqualTo(taken.at());
  }
}
