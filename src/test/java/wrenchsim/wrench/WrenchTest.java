package wrenchsim.wrench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import wrenchsim.joint.Joint;
import wrenchsim.joint.JointSpec;

class WrenchTest {
  private static final Instant START = Instant.parse("2026-11-25T10:00:00Z");

  private static Gauge gauge(Unit unit, String resolution, double bias, boolean angle) {
    return new Gauge(
        unit,
        new BigDecimal("20"),
        new BigDecimal("100"),
        new BigDecimal(resolution),
        0.005,
        bias,
        angle);
  }

  private static Wrench wrench(Gauge gauge, long seed) {
    return new Wrench(
        new WrenchSpec(
            "TW-0417",
            gauge,
            Optional.of(new WrenchClock(Duration.ofSeconds(-3), 100)),
            Optional.of(123L),
            false,
            Optional.empty()),
        START,
        new Random(new SplittableRandom(seed).nextLong()));
  }

  private static Joint joint(long seed) {
    return new Joint(
        new JointSpec(45, 40.5, 49.5, 30, 0.05), new Random(new SplittableRandom(seed).nextLong()));
  }

  @Test
  void theDisplayStepsByItsResolutionAndKeepsItsDecimals() {
    for (long seed = 0; seed < 300; seed++) {
      for (String step : new String[] {"0.01", "0.05", "0.1", "0.5", "1"}) {
        Wrench wrench = wrench(gauge(Unit.NEWTON_METRE, step, 0, true), seed);
        String shown = wrench.tighten(joint(seed), 45, START, Optional.empty()).reading().torque();
        BigDecimal value = new BigDecimal(shown);
        BigDecimal resolution = new BigDecimal(step);
        assertThat(value.scale()).as("seed %d: %s", seed, shown).isEqualTo(resolution.scale());
        assertThat(value.remainder(resolution).signum()).as("seed %d: %s", seed, shown).isZero();
        assertThat(value.doubleValue())
            .as("seed %d: %s", seed, shown)
            .isCloseTo(45, within(resolution.doubleValue() / 2 + 1e-9));
      }
    }
  }

  @Test
  void halvesGoAwayFromZeroAndDigitsArePlain() {
    assertThat(Digits.show(new BigDecimal("32.545"), new BigDecimal("0.01"))).isEqualTo("32.55");
    assertThat(Digits.show(new BigDecimal("32.54"), new BigDecimal("0.05"))).isEqualTo("32.55");
    assertThat(Digits.show(new BigDecimal("0.004"), new BigDecimal("0.01"))).isEqualTo("0.00");
    assertThat(Digits.show(new BigDecimal("1234"), new BigDecimal("1E+1"))).isEqualTo("1230");
  }

  @Test
  void theUnitsHaveTheirExactSize() {
    // Exact products of inch 0.0254 m, foot 0.3048 m, pound 0.45359237 kg and 9.80665 m/s2,
    // computed independently in rational arithmetic; NIST SP 811 B.8 prints seven digits of each.
    assertThat(Unit.POUND_FORCE_FOOT.toNm(BigDecimal.ONE)).isEqualTo(1.3558179483314004);
    assertThat(Unit.POUND_FORCE_INCH.toNm(BigDecimal.ONE)).isEqualTo(0.1129848290276167);
    assertThat(Unit.OUNCE_FORCE_INCH.toNm(BigDecimal.ONE)).isEqualTo(0.00706155181422604375);
    assertThat(Unit.KILOGRAM_FORCE_METRE.toNm(BigDecimal.ONE)).isEqualTo(9.80665);
    assertThat(Unit.KILOGRAM_FORCE_CENTIMETRE.toNm(BigDecimal.ONE)).isEqualTo(0.0980665);
    assertThat(Unit.CENTINEWTON_METRE.toNm(BigDecimal.ONE)).isEqualTo(0.01);
    assertThat(Unit.POUND_FORCE_FOOT.fromNm(25).doubleValue())
        .isCloseTo(18.4390537319, within(1e-9));
  }

  @Test
  void aWrenchInPoundFeetShowsThePhysicalTorqueInPoundFeet() {
    Gauge exact =
        new Gauge(
            Unit.POUND_FORCE_FOOT,
            new BigDecimal("10"),
            new BigDecimal("75"),
            new BigDecimal("0.1"),
            0,
            0,
            true);
    Reading reading = wrench(exact, 1).tighten(joint(1), 45, START, Optional.empty()).reading();
    assertThat(reading.torque()).isEqualTo("33.2");
    assertThat(reading.unit().symbol()).isEqualTo("lbf.ft");
  }

  @Test
  void whoTrustsAWrenchThatShowsTooMuchTightensTooLittle() {
    double sum = 0;
    for (long seed = 0; seed < 300; seed++) {
      sum +=
          wrench(gauge(Unit.NEWTON_METRE, "0.01", 0.04, true), seed)
              .tighten(joint(seed), 45, START, Optional.empty())
              .turn()
              .peakNm();
    }
    assertThat(sum / 300).isCloseTo(45 / 1.04, within(0.05));
  }

  @Test
  void eventsAreNumberedInARowAndTimedByTheWrenchsOwnClock() {
    Wrench wrench = wrench(gauge(Unit.NEWTON_METRE, "0.01", 0, true), 5);
    Joint joint = joint(5);
    Reading first = wrench.tighten(joint, 45, START, Optional.empty()).reading();
    Reading second =
        wrench.loosen(joint, START.plusSeconds(1000), Optional.of("pivot/1")).reading();
    assertThat(first.event()).contains(123L);
    assertThat(second.event()).contains(124L);
    assertThat(first.time()).contains(Instant.parse("2026-11-25T09:59:57Z"));
    // 1000 s at 100 ppm fast gain 0.1 s.
    assertThat(second.time()).contains(Instant.parse("2026-11-25T10:16:37.100Z"));
    assertThat(second.tightening()).isFalse();
    assertThat(second.fastener()).as("this wrench does not know where it is").isEmpty();
  }

  private static Wrench living(Life life) {
    WrenchSpec spec =
        new WrenchSpec(
            "TW-0417",
            new Gauge(
                Unit.NEWTON_METRE,
                new BigDecimal("20"),
                new BigDecimal("100"),
                new BigDecimal("0.01"),
                0,
                0.01,
                true),
            Optional.of(WrenchClock.RIGHT),
            Optional.of(123L),
            false,
            Optional.empty(),
            life);
    return new Wrench(spec, START, new Random(1));
  }

  private static Reading hit(Wrench wrench, long secondsAfterStart) {
    return wrench
        .tighten(
            joint(secondsAfterStart), 45, START.plusSeconds(secondsAfterStart), Optional.empty())
        .reading();
  }

  private static Life restarting(Optional<Duration> jump) {
    return new Life(0, Optional.of(new Restart(3, jump)), Optional.empty());
  }

  @Test
  void aNewBatteryBeginsTheNumbersAgainAndTheClockAt1970() {
    Wrench wrench = living(restarting(Optional.empty()));
    List<Reading> readings = LongStream.range(0, 8).mapToObj(n -> hit(wrench, 10 * n)).toList();
    assertThat(readings.stream().map(r -> r.event().orElseThrow()))
        .containsExactly(123L, 124L, 125L, 1L, 2L, 3L, 1L, 2L);
    assertThat(readings.stream().map(r -> r.time().orElseThrow().toString()))
        .containsExactly(
            "2026-11-25T10:00:00Z",
            "2026-11-25T10:00:10Z",
            "2026-11-25T10:00:20Z",
            "1970-01-01T00:00:00Z",
            "1970-01-01T00:00:10Z",
            "1970-01-01T00:00:20Z",
            "1970-01-01T00:00:00Z",
            "1970-01-01T00:00:10Z");
  }

  @Test
  void aNewBatteryMaySetTheClockBackOnceAndForAll() {
    Wrench wrench = living(restarting(Optional.of(Duration.ofHours(-2))));
    List<Reading> readings = LongStream.range(0, 8).mapToObj(n -> hit(wrench, 10 * n)).toList();
    assertThat(readings.get(2).time()).contains(START.plusSeconds(20));
    assertThat(readings.get(3).time()).contains(START.plusSeconds(30 - 7200));
    assertThat(readings.get(7).time()).contains(START.plusSeconds(70 - 7200));
  }

  @Test
  void aWrenchWearsWithUseUntilItIsAdjusted() {
    Wrench wrench = living(new Life(0.02, Optional.empty(), Optional.empty()));
    assertThat(wrench.bias()).isCloseTo(0.01, within(1e-12));
    for (int n = 0; n < 500; n++) {
      hit(wrench, n);
    }
    assertThat(wrench.bias()).isCloseTo(1.01 * 1.01 - 1, within(1e-12));
    double trueNm = wrench.tighten(joint(7), 45, START, Optional.empty()).turn().peakNm();
    assertThat(trueNm).isCloseTo(45 / (1.01 * 1.01), within(1e-9));
    wrench.adjust();
    assertThat(wrench.bias()).isCloseTo(0.01, within(1e-12));
  }

  @Test
  void impossibleLivesAreRefused() {
    assertThatThrownBy(() -> new Life(0.3, Optional.empty(), Optional.empty()))
        .hasMessage("the wear must lie within 0.2 either way, but is 0.3");
    assertThatThrownBy(() -> new Restart(0, Optional.empty()))
        .hasMessage("a restart comes after 1 event or more, not 0");
    assertThatThrownBy(() -> new Store(0, 0, 0, 0))
        .hasMessage("a wrench stores 1 to 10000 readings, but got 0");
    assertThatThrownBy(() -> new Store(1, 2, 0, 0))
        .hasMessage("away, twice and half are shares of 0 to 1, but got 2.0");
  }

  @Test
  void aWrenchWithoutAngleShowsNone() {
    assertThat(
            wrench(gauge(Unit.NEWTON_METRE, "0.01", 0, false), 1)
                .tighten(joint(1), 45, START, Optional.empty())
                .reading()
                .angle())
        .isEmpty();
  }

  @Test
  void aRangeHoldsABandWithItsEndsIncluded() {
    Gauge gauge = gauge(Unit.NEWTON_METRE, "0.01", 0, true);
    assertThat(gauge.holds(20, 100)).isTrue();
    assertThat(gauge.holds(19.9, 30)).isFalse();
    assertThat(gauge.holds(90, 100.1)).isFalse();
  }

  @Test
  void impossibleWrenchesAreRefused() {
    assertThatThrownBy(() -> gauge(Unit.NEWTON_METRE, "0", 0, true))
        .hasMessage("the resolution must lie above 0 and below max, but is 0");
    assertThatThrownBy(() -> gauge(Unit.NEWTON_METRE, "0.01", 0.5, true))
        .hasMessage("the bias must lie between -0.5 and 0.5, but is 0.5");
    assertThatThrownBy(
            () ->
                new WrenchSpec(
                    "TW|1",
                    gauge(Unit.NEWTON_METRE, "0.01", 0, true),
                    Optional.empty(),
                    Optional.empty(),
                    false,
                    Optional.empty()))
        .hasMessage(
            "a serial number is 1 to 64 printable ASCII characters without '|', but got 'TW|1'");
  }
}
