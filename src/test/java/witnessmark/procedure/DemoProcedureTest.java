package witnessmark.procedure;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import witnessmark.sight.Ability;
import witnessmark.sight.Mistake;
import witnessmark.sight.Rack;
import witnessmark.sight.Sight;
import witnessmark.torque.Torque;

class DemoProcedureTest {
  private static Procedure demo() throws IOException {
    Path file = Path.of("demo-data/RAM-210.toml");
    return ProcedureFile.parse(file.toString(), Files.readString(file));
  }

  private static List<TightenStep> groups(Procedure procedure) {
    return procedure.steps().stream()
        .filter(TightenStep.class::isInstance)
        .map(TightenStep.class::cast)
        .toList();
  }

  @Test
  void theDemoShowsEveryOrderSeveralPassesAndGates() throws IOException {
    Procedure procedure = demo();
    List<TightenStep> groups = groups(procedure);

    assertThat(groups).hasSize(9);
    assertThat(groups.stream().mapToInt(g -> g.positions().size()).sum()).isEqualTo(36);
    assertThat(groups.stream().map(g -> g.order().kind())).contains(Order.Kind.values());
    assertThat(groups.stream().map(TightenStep::criticality))
        .contains(Criticality.DANGER, Criticality.OTHER);
    assertThat(procedure.steps().stream().filter(AttestStep.class::isInstance)).hasSize(4);
    assertThat(procedure.steps().stream().filter(MeasureStep.class::isInstance)).hasSize(1);
    assertThat(procedure.accepts("ATR-26-0147")).isTrue();
  }

  @Test
  void thePivotIsFinishedOnlyAfterTheCrossMember() throws IOException {
    List<Stage> stages = Stages.of(demo());
    Stage pivot =
        stages.stream().filter(s -> s.key().equals("pivot:final")).findFirst().orElseThrow();

    assertThat(pivot.physical().stream().map(n -> stages.get(n).key()))
        .containsExactly("pivot:snug", "cross-member:final");
  }

  /** TW-0417 spans 20 to 100 N·m; TW-0502 is good from a fifth of its 25 N·m. */
  @Test
  void everyBandLiesWithinTheRangeOfItsWrench() throws IOException {
    for (TightenStep group : groups(demo())) {
      boolean large = group.wrenches().equals(List.of("TW-0417"));
      for (Pass pass : group.passes()) {
        assertThat(pass.band().low())
            .as(group.id())
            .isGreaterThanOrEqualTo(Torque.parse(large ? "20 N.m" : "5 N.m"));
        assertThat(pass.band().high())
            .as(group.id())
            .isLessThanOrEqualTo(Torque.parse(large ? "100 N.m" : "25 N.m"));
      }
    }
  }

  @Test
  void nothingOfItLooksDoubtful() throws IOException {
    assertThat(Sanity.findings(demo())).isEmpty();
  }

  @Test
  void whatItsReadingsMayNeverShow() throws IOException {
    Rack rack = Rack.of(Map.of("TW-0417", Ability.ANGLE, "TW-0502", Ability.TORQUE_ONLY));
    assertThat(
            Sight.of(demo(), rack).stream()
                .filter(a -> a.mistake() == Mistake.HIDDEN_SKIP)
                .map(a -> a.step() + " " + a.pass() + " " + a.visibility().code()))
        .containsExactly(
            "carrier-left snug asked",
            "carrier-left final seen",
            "carrier-right snug asked",
            "carrier-right final seen",
            "pivot snug asked",
            "pivot final seen",
            "cross-member final seen",
            "pinch-bolt final seen",
            "brake-left final seen",
            "brake-right final seen",
            "caliper final seen",
            "cable-guides final not-seen");
  }
}
