package witnessmark.torque;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class AngleTest {
  @Test
  void anAngleKeepsItsDigitsAndIsComparedBySize() {
    assertThat(Angle.of("41.20")).hasToString("41.20");
    assertThat(Angle.of("41.20")).isEqualByComparingTo(Angle.of("41.2"));
    assertThat(Angle.of("-100000")).isLessThan(Angle.of("1e5"));
  }

  @Test
  void anAngleOutOfRangeIsNamed() {
    assertThatThrownBy(() -> Angle.of("100000.1"))
        .hasMessage("angle 100000.1 is out of range; -100000 to 100000 degrees is allowed");
    assertThatThrownBy(() -> Angle.of("-1e6"))
        .hasMessage("angle -1e6 is out of range; -100000 to 100000 degrees is allowed");
    assertThatThrownBy(() -> Angle.of("41°"))
        .hasMessage("\"41°\" is not a decimal number; allowed are forms like 32.54, 5 or 1.2e1");
  }

  @Test
  void aDirectionIsReadByItsWordOnly() {
    assertThat(Direction.of("cw")).isEqualTo(Direction.CW);
    assertThat(Direction.of("ccw")).isEqualTo(Direction.CCW);
    assertThatThrownBy(() -> Direction.of("CW"))
        .hasMessage("direction \"CW\" is unknown; cw or ccw is allowed");
  }
}
