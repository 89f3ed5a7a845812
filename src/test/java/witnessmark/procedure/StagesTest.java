package witnessmark.procedure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import witnessmark.torque.Band;
import witnessmark.torque.Torque;

class StagesTest {
  private static final Band BAND = new Band(Torque.parse("9 N.m"), Torque.parse("11 N.m"));

  private static Pass pass(String name, String... after) {
    return new Pass(name, Optional.empty(), BAND, Optional.empty(), prerequisites(after), false);
  }

  private static List<Prerequisite> prerequisites(String... after) {
    return List.of(after).stream().map(Prerequisite::parse).toList();
  }

  private static Step tighten(String id, Optional<List<Prerequisite>> after, Pass... passes) {
    return new TightenStep(
        id,
        id,
        after,
        List.of("1"),
        new Order(Order.Kind.STRICT, List.of(0)),
        List.of(passes),
        new Joint(Optional.empty(), Optional.empty(), Optional.empty()),
        List.of(),
        Criticality.FUNCTION,
        Care.USUAL,
        Optional.empty(),
        Optional.empty());
  }

  private static Step attest(String id, Optional<List<Prerequisite>> after) {
    return new AttestStep(id, id, after, "Done.", false, Optional.empty(), Optional.empty());
  }

  private static List<Stage> stages(Step... steps) {
    return Stages.of(
        new Procedure("RAM-210", "C", "Rear-axle module", Optional.empty(), List.of(steps)));
  }

  @Test
  void aStepWithoutAfterWaitsForTheLastPassBeforeItAsMereSequence() {
    List<Stage> stages =
        stages(
            tighten("pivot", Optional.empty(), pass("snug"), pass("final")),
            attest("wire", Optional.empty()));

    assertThat(stages).extracting(Stage::key).containsExactly("pivot:snug", "pivot:final", "wire");
    assertThat(stages.get(0).requires()).isEmpty();
    assertThat(stages.get(2).requires()).containsExactly(1);
    assertThat(stages.get(2).physical()).isEmpty();
  }

  @Test
  void aPassWaitsPhysicallyForThePassBeforeItAndForItsOwnAfter() {
    List<Stage> stages =
        stages(
            tighten("pivot", Optional.empty(), pass("snug"), pass("final", "cross-member")),
            tighten(
                "cross-member",
                Optional.of(prerequisites("pivot:snug")),
                pass("snug"),
                pass("final")));

    assertThat(stages.get(1).requires()).containsExactly(0, 3);
    assertThat(stages.get(1).physical()).containsExactly(0, 3);
    assertThat(stages.get(2).requires()).containsExactly(0);
    assertThat(stages.get(2).physical()).containsExactly(0);
  }

  @Test
  void theFirstPassWithItsOwnAfterStillWaitsForTheSequence() {
    List<Stage> stages =
        stages(
            attest("check", Optional.empty()),
            attest("washers", Optional.empty()),
            tighten("pivot", Optional.empty(), pass("final", "check")));

    assertThat(stages.get(2).requires()).containsExactly(0, 1);
    assertThat(stages.get(2).physical()).containsExactly(0);
  }

  @Test
  void aStepWithAnEmptyAfterWaitsForNothing() {
    List<Stage> stages =
        stages(attest("check", Optional.empty()), attest("free", Optional.of(List.of())));

    assertThat(stages.get(1).requires()).isEmpty();
  }

  @Test
  void aPrerequisiteThatDoesNotExistIsRefused() {
    assertThatThrownBy(() -> stages(attest("wire", Optional.of(prerequisites("pivot:final")))))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("procedure RAM-210 has no step or pass \"pivot:final\"");
  }
}
