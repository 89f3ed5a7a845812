package witnessmark.wrench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import witnessmark.torque.Torque;
import witnessmark.torque.WrenchKind;

class EnrolmentsTest {
  private static final Wrench FIRST = wrench("TW-0417", "2025-09-01", "2026-09-01", 2);
  private static final Wrench SECOND = wrench("TW-0417", "2026-10-01", "2027-10-01", 9);

  static Wrench wrench(String serial, String calibrated, String due, long entry) {
    return new Wrench(
        serial,
        Torque.parse("20 N.m"),
        Torque.parse("100 N.m"),
        day(calibrated),
        day(due),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        WrenchKind.INDICATING,
        true,
        entry);
  }

  private static Instant day(String day) {
    return LocalDate.parse(day).atStartOfDay(ZoneOffset.UTC).toInstant();
  }

  @Test
  void aMomentIsJudgedByTheCalibrationOfItsDay() {
    Enrolments enrolments = Enrolments.of(FIRST).and(SECOND);
    assertThat(enrolments.at(day("2026-08-31"))).isEqualTo(FIRST);
    assertThat(enrolments.at(day("2026-10-01"))).isEqualTo(SECOND);
    assertThat(enrolments.newest()).isEqualTo(SECOND);
  }

  @Test
  void betweenTwoCalibrationsNoneIsInForce() {
    Enrolments enrolments = Enrolments.of(FIRST).and(SECOND);
    Instant between = day("2026-09-15");
    assertThat(enrolments.at(between)).isEqualTo(FIRST);
    assertThat(enrolments.at(between).calibratedAt(between)).isFalse();
  }

  @Test
  void beforeTheFirstCalibrationNoneIsInForce() {
    Enrolments enrolments = Enrolments.of(FIRST).and(SECOND);
    Instant before = day("2025-08-31");
    assertThat(enrolments.at(before).calibratedAt(before)).isFalse();
  }

  @Test
  void aNewerEnrolmentCorrectsAnOlderOneFromItsOwnCalibrationOn() {
    Wrench dropped = wrench("TW-0417", "2025-09-01", "2026-03-01", 5);
    Enrolments enrolments = Enrolments.of(FIRST).and(dropped);
    assertThat(enrolments.at(day("2026-02-01"))).isEqualTo(dropped);
    assertThat(enrolments.at(day("2026-04-01")).calibratedAt(day("2026-04-01"))).isFalse();
  }

  @Test
  void enrolmentsAreOfOneWrench() {
    assertThatThrownBy(() -> new Enrolments(List.of(), List.of()))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(
            () -> Enrolments.of(FIRST).and(wrench("TW-9", "2026-10-01", "2027-10-01", 3)))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
