package witnessmark.decode;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import witnessmark.toml.Section;
import witnessmark.torque.Direction;
import witnessmark.torque.Label;
import witnessmark.torque.TorqueUnit;

/** Reads the table {@code [values]} of a profile. */
final class ValuesSection {
  private static final String UNITS = "allowed are " + TorqueUnit.allowed();
  private static final String DIRECTIONS = "\"cw\" or \"ccw\" is allowed";
  private static final String LABEL = "write 1 to 64 printable characters";

  private ValuesSection() {}

  static Values read(Section values) {
    Map<EventField, String> fixed = new EnumMap<>(EventField.class);
    for (EventField field : List.of(EventField.WRENCH, EventField.OPERATOR)) {
      values
          .read(field.code(), LABEL, t -> Label.check(field.code(), t))
          .ifPresent(t -> fixed.put(field, t));
    }
    values
        .read("unit", UNITS, ValuesSection::unit)
        .ifPresent(u -> fixed.put(EventField.UNIT, u.symbol()));
    values
        .read("direction", DIRECTIONS, ValuesSection::direction)
        .ifPresent(d -> fixed.put(EventField.DIRECTION, d.code()));
    boolean comma = values.bool("decimal-comma").orElse(false);
    Map<String, TorqueUnit> units = names(values, "unit-names", UNITS, ValuesSection::unit);
    Map<String, Direction> directions =
        names(values, "direction-names", DIRECTIONS, ValuesSection::direction);
    values.finish();
    return new Values(comma, fixed, units, directions);
  }

  private static <T> Map<String, T> names(
      Section values, String key, String allowed, Function<String, T> reader) {
    Map<String, T> names = new HashMap<>();
    values
        .section(key)
        .ifPresent(
            table -> {
              for (String name : table.keys()) {
                table.read(name, allowed, reader).ifPresent(v -> names.put(name, v));
              }
            });
    return names;
  }

  private static TorqueUnit unit(String symbol) {
    return TorqueUnit.of(symbol)
        .orElseThrow(() -> new IllegalArgumentException("unknown unit \"" + symbol + "\""));
  }

  private static Direction direction(String code) {
    try {
      return Direction.of(code);
    } catch (IllegalArgumentException e) {
      throw new IllegalArgumentException("unknown direction \"" + code + "\"", e);
    }
  }
}
