package witnessmark.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import witnessmark.desk.Assign;
import witnessmark.desk.EnrolWrench;
import witnessmark.entry.Effect;
import witnessmark.entry.Entry;
import witnessmark.entry.Judged;
import witnessmark.entry.Objection;
import witnessmark.entry.Reason;
import witnessmark.torque.Direction;
import witnessmark.torque.Torque;
import witnessmark.torque.TorqueEvent;

/** Readings that come late are judged by the calibration that was in force when they happened. */
class RecalibrationTest {
  private static final Instant NOW = Bench.START;

  private final Bench bench = Bench.on(Bench.group(9));

  /** Enrols TW-9, calibrated so many days before now and due so many days after. */
  private void enrol(int calibrated, int due, String high) {
    bench.person(
        new EnrolWrench(
            "TW-9",
            Torque.parse("20 N.m"),
            Torque.parse(high),
            NOW.plus(Duration.ofDays(calibrated)),
            NOW.plus(Duration.ofDays(due)),
            Optional.empty(),
            Optional.empty(),
            Optional.empty()));
  }

  /** A reading of 50 N.m that happened so many days ago, without a job; a person places it. */
  private Judged happened(int day) {
    Entry.TorqueTaken taken = (Entry.TorqueTaken) bench.takeStored(event(day)).entries().get(0);
    assertThat(taken.judged().reason()).isEqualTo(Reason.NO_ACTIVE_JOB);
    String next = bench.job().plan().name(bench.job().next(bench.job().openStages().get(0)).get(0));
    bench.person(
        new Assign(
            bench.size() - 1, taken, bench.jobName(), Optional.of(next), "badge-07", "stored"));
    return ((Entry.Assigned) bench.log().get((int) bench.size() - 1)).judged();
  }

  private TorqueEvent event(int day) {
    TorqueEvent now = bench.event("TW-9", "50 N.m", "", Direction.CW, "");
    return new TorqueEvent(
        now.wrench(),
        now.number(),
        Optional.of(NOW.plus(Duration.ofDays(day))),
        now.torque(),
        now.angle(),
        now.direction(),
        now.fastener(),
        now.operator());
  }

  @Test
  void aLateReadingOfADayWithAValidCalibrationCountsAfterTheRecalibration() {
    enrol(-300, -1, "100 N.m");
    enrol(-1, 300, "100 N.m");
    assertThat(happened(-5).objections()).isEmpty();
    assertThat(happened(0).objections()).isEmpty();
  }

  @Test
  void aLateReadingOfADayWhenItHadLapsedNeverCounts() {
    enrol(-300, -10, "100 N.m");
    enrol(-1, 300, "100 N.m");
    Judged lapsed = happened(-5);
    assertThat(lapsed.objections()).containsExactly(Objection.CALIBRATION_NOT_IN_FORCE);
    assertThat(lapsed.effect()).isEqualTo(Effect.AGAIN);
    assertThat(happened(-11).effect()).isEqualTo(Effect.CREDITED);
  }

  @Test
  void aLateReadingFromBeforeTheFirstCalibrationNeverCounts() {
    enrol(-3, 300, "100 N.m");
    assertThat(happened(-5).objections()).containsExactly(Objection.CALIBRATION_NOT_IN_FORCE);
  }

  @Test
  void theRangeIsThatOfTheDay() {
    enrol(-300, -1, "40 N.m");
    enrol(-1, 300, "100 N.m");
    assertThat(happened(-5).objections()).containsExactly(Objection.OUTSIDE_WRENCH_RANGE);
    assertThat(happened(0).objections()).isEmpty();
  }

  @Test
  void aReadingThatAPersonAssignsIsJudgedByItsDay() {
    Bench asked = Bench.on(Bench.group(2) + Bench.step("b", 2, "after = []"));
    enrolOn(asked, -300, -10);
    enrolOn(asked, -1, 300);
    TorqueEvent now = asked.event("TW-9", "50 N.m", "", Direction.CW, "");
    Entry.TorqueTaken asks =
        (Entry.TorqueTaken)
            asked
                .takeStored(
                    new TorqueEvent(
                        now.wrench(),
                        OptionalLong.of(77),
                        Optional.of(NOW.minus(Duration.ofDays(5))),
                        now.torque(),
                        now.angle(),
                        now.direction(),
                        now.fastener(),
                        now.operator()))
                .entries()
                .get(0);
    assertThat(asks.judged().reason()).isEqualTo(Reason.NO_ACTIVE_JOB);
    asked.person(
        new Assign(
            asked.size() - 1, asks, asked.jobName(), Optional.of("b/1"), "badge-07", "saw it"));
    Entry.Assigned assigned = (Entry.Assigned) asked.log().get((int) asked.size() - 1);
    assertThat(assigned.judged().objections()).containsExactly(Objection.CALIBRATION_NOT_IN_FORCE);
  }

  private static void enrolOn(Bench bench, int calibrated, int due) {
    bench.person(
        new EnrolWrench(
            "TW-9",
            Torque.parse("20 N.m"),
            Torque.parse("100 N.m"),
            NOW.plus(Duration.ofDays(calibrated)),
            NOW.plus(Duration.ofDays(due)),
            Optional.empty(),
            Optional.empty(),
            Optional.empty()));
  }

  @Test
  void replayKeepsEveryEnrolment() {
    enrol(-300, -10, "100 N.m");
    enrol(-1, 300, "100 N.m");
    assertThat(bench.replayed().wrenches()).isEqualTo(bench.shop().wrenches());
    assertThat(bench.replayed().wrenches().get("TW-9").all()).hasSize(2);
  }
}
