package witnessmark.torque;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;

class TorqueEventTest {
  private static TorqueEvent event(String wrench, long number, String fastener, String operator) {
    return new TorqueEvent(
        wrench,
        OptionalLong.of(number),
        Optional.empty(),
        Torque.parse("32.54 N.m"),
        Optional.empty(),
        Direction.CW,
        Optional.of(fastener),
        Optional.of(operator));
  }

  @Test
  void theFieldWithAFaultIsNamed() {
    String form = " must be 1 to 64 printable characters without blanks at the ends";
    assertThatThrownBy(() -> event("", 1, "pivot/1", "badge-07")).hasMessage("wrench" + form);
    assertThatThrownBy(() -> event("w", 1, " ", "badge-07")).hasMessage("fastener" + form);
    assertThatThrownBy(() -> event("w", 1, "pivot/1", "b\n")).hasMessage("operator" + form);
    assertThatThrownBy(() -> event("w", -1, "pivot/1", "badge-07"))
        .hasMessage("event number -1 is negative; 0 or more is allowed");
    assertThat(event("w", 0, "pivot/1", "badge-07").number()).hasValue(0);
  }

  @Test
  void everyVerdictIsReadBackFromItsWordAndHasAnEvaluation() {
    for (Verdict verdict : Verdict.values()) {
      assertThat(Verdict.of(verdict.code())).isEqualTo(verdict);
    }
    // OPC 40001-101 ResultEvaluationEnum: read in a public node set.
    assertThat(Verdict.values())
        .extracting(Verdict::evaluation)
        .containsExactly("OK", "NotOK", "NotOK", "NotOK", "NotOK", "NotDecidable");
  }
}
