package witnessmark.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import witnessmark.desk.CalibrateWrench;
import witnessmark.desk.CheckWrench;
import witnessmark.desk.RetireWrench;
import witnessmark.desk.Tried;
import witnessmark.entry.CalibrationEnd;
import witnessmark.entry.Effect;
import witnessmark.entry.Entry;
import witnessmark.entry.Judged;
import witnessmark.entry.Objection;
import witnessmark.job.Shop;
import witnessmark.torque.Digits;
import witnessmark.torque.Torque;

/** What calibrations and checks on record do to the readings after them. */
class CalibrationTest {
  private static final Instant DAY = Instant.parse("2026-11-25T00:00:00Z");

  private final Bench bench = Bench.on(Bench.group(9));

  private CalibrateWrench calibration(long operations, long used, String at20) {
    return new CalibrateWrench(
        "TW-1",
        "C-26-140",
        "calibration room",
        DAY,
        Optional.empty(),
        Optional.of(operations),
        used,
        new Digits("1.0"),
        List.of(),
        Stream.of(
                List.of("20 N.m", at20), List.of("60 N.m", "60 N.m"), List.of("100 N.m", "99 N.m"))
            .map(p -> tried(p.get(0), p.get(1)))
            .toList(),
        Optional.empty());
  }

  private static Tried tried(String indicated, String reference) {
    return new Tried(Torque.parse(indicated), Collections.nCopies(5, Torque.parse(reference)));
  }

  private void notInForce(Judged judged) {
    assertThat(judged.objections()).contains(Objection.CALIBRATION_NOT_IN_FORCE);
    assertThat(judged.effect()).isNotEqualTo(Effect.CREDITED);
  }

  @Test
  void aCalibrationGivesItsCertificateUncertaintyAndDueDate() {
    bench.person(calibration(5000, 0, "20 N.m"));
    assertThat(bench.shop().wrench("TW-1", bench.now()))
        .hasValueSatisfying(
            w -> {
              assertThat(w.certificate()).contains("C-26-140");
              assertThat(w.uncertainty()).contains(new Digits("1.0"));
              assertThat(w.due()).isEqualTo(Instant.parse("2027-11-25T00:00:00Z"));
              assertThat(w.low()).isEqualTo(Torque.parse("20 N.m"));
            });
    assertThat(bench.hit("50 N.m").judged().effect()).isEqualTo(Effect.CREDITED);
  }

  @Test
  void theLastReadingThatACalibrationIsGoodForCountsAndTheNextDoesNot() {
    bench.person(calibration(5, 2, "20 N.m"));
    assertThat(bench.hit("50 N.m").judged().effect()).isEqualTo(Effect.CREDITED);
    assertThat(bench.hit("50 N.m").judged().effect()).isEqualTo(Effect.CREDITED);
    assertThat(bench.hit("50 N.m").judged().effect()).isEqualTo(Effect.CREDITED);
    assertThat(bench.log().get((int) bench.size() - 1))
        .isInstanceOfSatisfying(
            Entry.CalibrationEnded.class,
            e -> assertThat(e.cause()).isEqualTo(CalibrationEnd.OPERATIONS_USED_UP));
    notInForce(bench.hit("50 N.m").judged());
    assertThat(bench.hit("TW-2", "50 N.m", "", "").judged().effect()).isEqualTo(Effect.CREDITED);
  }

  @Test
  void aShopThatStartsAnewGoesOnCounting() {
    bench.person(calibration(5, 2, "20 N.m"));
    bench.hit("50 N.m");
    Shop folded = bench.shop();
    assertThat(folded.uses().get("TW-1").used()).isEqualTo(3);
    assertThat(folded.counted(Map.of("TW-1", 1L))).isEqualTo(folded);
    assertThat(folded.counted(Map.of()).uses().get("TW-1").used()).isEqualTo(2);
  }

  @Test
  void aFurtherCalibrationCountsFromItsOwnBeginning() {
    bench.person(calibration(3, 0, "20 N.m"));
    bench.hit("50 N.m");
    bench.hit("50 N.m");
    bench.person(calibration(3, 0, "20 N.m"));
    bench.hit("50 N.m");
    assertThat(bench.shop().uses().get("TW-1").used()).isEqualTo(1);
  }

  @Test
  void aWrenchLeftOutOfToleranceAcceptsNothing() {
    // 20 shown on 19.2: 4.17 % of 4 % permissible
    bench.person(calibration(5000, 0, "19.2 N.m"));
    notInForce(bench.hit("50 N.m").judged());
    bench.person(calibration(5000, 0, "20 N.m"));
    assertThat(bench.hit("50 N.m").judged().effect()).isEqualTo(Effect.CREDITED);
  }

  @Test
  void aCheckThatFailsEndsTheCalibrationAndOneThatHoldsDoesNot() {
    bench.person(
        new CheckWrench("TW-1", "tester-1", List.of(tried("60 N.m", "60.1 N.m")), "badge-07"));
    assertThat(bench.hit("50 N.m").judged().effect()).isEqualTo(Effect.CREDITED);
    bench.person(
        new CheckWrench("TW-1", "tester-1", List.of(tried("60 N.m", "55 N.m")), "badge-07"));
    notInForce(bench.hit("50 N.m").judged());
  }

  @Test
  void aRetiredWrenchAcceptsNothingUntilItIsEnrolledAnew() {
    bench.person(new RetireWrench("TW-1", "badge-07", "fell from the bench"));
    notInForce(bench.hit("50 N.m").judged());
    bench.person(Bench.wrench("TW-1"));
    assertThat(bench.hit("50 N.m").judged().effect()).isEqualTo(Effect.CREDITED);
  }
}
