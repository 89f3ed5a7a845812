package witnessmark.procedure;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import witnessmark.toml.Section;
import witnessmark.torque.Digits;

/** Reads what binds the work on a tighten step beside its torque. */
final class CareReader {
  private final Section section;

  CareReader(Section section) {
    this.section = section;
  }

  Care read() {
    return new Care(telling(), new ToolReader(section).read(), rework());
  }

  private Rework rework() {
    OptionalLong tries = section.integer("tries", 1, 20);
    return new Rework(
        section.bool("single-use").orElse(false),
        tries.isPresent() ? OptionalInt.of((int) tries.getAsLong()) : OptionalInt.empty());
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
