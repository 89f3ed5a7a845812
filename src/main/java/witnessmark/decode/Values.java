package witnessmark.decode;

import java.util.Map;
import java.util.Optional;
import witnessmark.torque.Direction;
import witnessmark.torque.TorqueUnit;

/**
 * How a wrench's own ways of writing become ours.
 *
 * @param decimalComma whether decimals are written with a comma
 * @param fixed values for fields that the bytes leave out
 * @param unitNames units by the wrench's names
 * @param directionNames directions by the wrench's names
 */
public record Values(
    boolean decimalComma,
    Map<EventField, String> fixed,
    Map<String, TorqueUnit> unitNames,
    Map<String, Direction> directionNames) {
  /** Everything written our way, nothing fixed. */
  public static final Values NONE = new Values(false, Map.of(), Map.of(), Map.of());

  public Values {
    fixed = Map.copyOf(fixed);
    unitNames = Map.copyOf(unitNames);
    directionNames = Map.copyOf(directionNames);
  }

  /** Whether nothing is said that only readings have. */
  boolean ofScans() {
    return !decimalComma
        && EventField.OF_SCANS.containsAll(fixed.keySet())
        && unitNames.isEmpty()
        && directionNames.isEmpty();
  }

  /** The field's text our way; empty where neither the bytes nor a fixed value say anything. */
  Optional<String> settle(EventField field, Optional<String> sent) throws Refusal {
    Optional<String> text = sent.map(String::strip).filter(t -> !t.isEmpty());
    if (text.isEmpty()) {
      return Optional.ofNullable(fixed.get(field));
    }
    return Optional.of(ours(field, text.get()));
  }

  private String ours(EventField field, String text) throws Refusal {
    if (field == EventField.UNIT && unitNames.containsKey(text)) {
      return unitNames.get(text).symbol();
    }
    if (field == EventField.DIRECTION && directionNames.containsKey(text)) {
      return directionNames.get(text).code();
    }
    return decimalComma && field.decimal() ? point(field, text) : text;
  }

  private static String point(EventField field, String text) throws Refusal {
    if (text.indexOf('.') >= 0) {
      throw new Refusal(
          field.code()
              + " "
              + Reason.shown(text)
              + " has a point where this profile writes decimals with a comma");
    }
    return text.replace(',', '.');
  }
}
