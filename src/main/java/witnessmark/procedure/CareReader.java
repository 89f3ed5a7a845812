package witnessmark.procedure;

import java.math.BigDecimal;
import java.util.Optional;
import witnessmark.toml.Section;
import witnessmark.torque.Digits;

/** Reads what binds the work on a tighten step beside its torque. */
final class CareReader {
  private final Section section;

  CareReader(Section section) {
    this.section = section;
  }

  Care read() {
    return new Care(telling(), new ToolReader(section).read(), Rework.USUAL);
  }

  private Telling telling() {
    Telling usual = Telling.USUAL;
    return new Telling(
        number("recheck-angle", "5", "0", "90").orElse(usual.recheckAngle()),
        number("angle-scatter", "10", "0.1", "100").orElse(usual.scatter()),
        number("seconds-between", "1.5", "0", "60"));
  }

  private Optional<BigDecimal> number(String key, String example, String least, String most) {
    return Written.within(section, key, example, least, most).map(Digits::value);
  }
}
