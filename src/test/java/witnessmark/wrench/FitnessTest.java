package witnessmark.wrench;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import witnessmark.entry.Objection;
import witnessmark.procedure.Acceptance;
import witnessmark.procedure.Pass;
import witnessmark.procedure.Tool;
import witnessmark.torque.Adapter;
import witnessmark.torque.Angle;
import witnessmark.torque.AngleBand;
import witnessmark.torque.Band;
import witnessmark.torque.Digits;
import witnessmark.torque.Length;
import witnessmark.torque.Torque;
import witnessmark.torque.WrenchKind;

class FitnessTest {
  private static final Instant DAY = Instant.parse("2026-09-01T00:00:00Z");

  private static Wrench wrench(
      String resolution, String uncertainty, WrenchKind kind, boolean angle) {
    return new Wrench(
        "TW-0417",
        Torque.parse("20 N.m"),
        Torque.parse("100 N.m"),
        DAY,
        DAY.plusSeconds(1),
        Optional.empty(),
        given(uncertainty).map(Digits::new),
        given(resolution).map(Torque::parse),
        kind,
        angle,
        1);
  }

  private static Wrench wrench(String resolution, String uncertainty) {
    return wrench(resolution, uncertainty, WrenchKind.INDICATING, true);
  }

  private static Optional<String> given(String text) {
    return Optional.of(text).filter(t -> !t.isEmpty());
  }

  private static Pass pass(String low, String high) {
    return new Pass(
        "final",
        Optional.empty(),
        new Band(Torque.parse(low), Torque.parse(high)),
        Optional.empty(),
        List.of(),
        false);
  }

  private static Tool guarded(String factor) {
    return tool(Optional.empty(), new Acceptance(Optional.of(new BigDecimal(factor))), "10");
  }

  private static Tool tool(Optional<Adapter> adapter, Acceptance acceptance, String steps) {
    return new Tool(Optional.empty(), adapter, acceptance, new BigDecimal(steps));
  }

  @Test
  void aWrenchThatFitsHasNothingAgainstIt() {
    assertThat(Fitness.of(wrench("1 N.m", "2"), pass("45 N.m", "55 N.m"), guarded("1"))).isEmpty();
  }

  @Test
  void aBandMustBeTenStepsWideUnlessTheStepAsksForFewer() {
    Pass pass = pass("45 N.m", "55 N.m");
    assertThat(Fitness.of(wrench("1 N.m", ""), pass, Tool.ANY)).isEmpty();
    assertThat(Fitness.of(wrench("1.01 N.m", ""), pass, Tool.ANY))
        .containsExactly(Objection.RESOLUTION_TOO_COARSE);
    assertThat(
            Fitness.of(wrench("2 N.m", ""), pass, tool(Optional.empty(), Acceptance.SIMPLE, "5")))
        .isEmpty();
    assertThat(
            Fitness.of(wrench("9 N.m", ""), pass, tool(Optional.empty(), Acceptance.SIMPLE, "0")))
        .isEmpty();
    assertThat(Fitness.of(wrench("", ""), pass, Tool.ANY)).isEmpty();
  }

  @Test
  void anAdapterMakesTheStepsLargerAndMovesTheRange() {
    Adapter half = new Adapter(Length.parse("20 in"), Length.parse("10 in"), Angle.of("0"));
    Tool tool = tool(Optional.of(half), Acceptance.SIMPLE, "10");
    // 0.7 N.m at the drive is 1.05 N.m at the fastener
    assertThat(Fitness.of(wrench("0.7 N.m", ""), pass("45 N.m", "55 N.m"), tool))
        .containsExactly(Objection.RESOLUTION_TOO_COARSE);
    // 25 N.m at the fastener is 16.7 at the drive; 145 is 96.7
    assertThat(Fitness.of(wrench("", ""), pass("20 N.m", "30 N.m"), tool))
        .containsExactly(Objection.OUTSIDE_WRENCH_RANGE);
    assertThat(Fitness.of(wrench("", ""), pass("140 N.m", "150 N.m"), tool)).isEmpty();
    assertThat(Fitness.of(wrench("", ""), pass("140 N.m", "150 N.m"), Tool.ANY))
        .containsExactly(Objection.OUTSIDE_WRENCH_RANGE);
  }

  @Test
  void aGuardedPassNeedsAnUncertaintyThatLeavesSomething() {
    Pass pass = pass("49 N.m", "51 N.m");
    assertThat(Fitness.of(wrench("", ""), pass, guarded("1")))
        .containsExactly(Objection.UNCERTAINTY_UNKNOWN);
    // 2 %: from 49/0.98 = 50 to 51/1.02 = 50, one torque is left
    assertThat(Fitness.of(wrench("", "2"), pass, guarded("1"))).isEmpty();
    assertThat(Fitness.of(wrench("", "2"), pass, guarded("1.01")))
        .containsExactly(Objection.UNCERTAINTY_TOO_LARGE);
    assertThat(Fitness.of(wrench("", "100"), pass, guarded("1")))
        .containsExactly(Objection.UNCERTAINTY_TOO_LARGE);
  }

  @Test
  void kindAndAngleAreAskedOfTheRegister() {
    Pass window =
        new Pass(
            "final",
            Optional.of(Torque.parse("50 N.m")),
            new Band(Torque.parse("45 N.m"), Torque.parse("55 N.m")),
            Optional.of(new AngleBand(Angle.of("20"), Angle.of("60"))),
            List.of(),
            false);
    Tool indicating =
        new Tool(
            Optional.of(WrenchKind.INDICATING),
            Optional.empty(),
            Acceptance.SIMPLE,
            BigDecimal.TEN);
    assertThat(Fitness.of(wrench("", "", WrenchKind.SETTING, false), window, indicating))
        .containsExactly(Objection.WRONG_KIND_OF_WRENCH, Objection.ANGLE_MISSING);
    assertThat(Fitness.of(wrench("", ""), window, indicating)).isEmpty();
  }
}
