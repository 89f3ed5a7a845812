package witnessmark.decode;

import java.time.Instant;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import witnessmark.torque.Angle;
import witnessmark.torque.Digits;
import witnessmark.torque.Direction;
import witnessmark.torque.Torque;
import witnessmark.torque.TorqueEvent;
import witnessmark.torque.TorqueUnit;
import witnessmark.torque.UnitSpelling;

/** The texts of a torque event, field by field, before they are read. */
final class EventDraft {
  /** Reads the text of the field {@code time}. */
  @FunctionalInterface
  interface TimeReader {
    Instant read(String text) throws Refusal;
  }

  private final Map<EventField, String> texts = new EnumMap<>(EventField.class);

  void put(EventField field, String text) {
    texts.put(field, text);
  }

  /** The event the texts make. */
  TorqueEvent event(TimeReader clock) throws Refusal {
    String wrench = required(EventField.WRENCH);
    String time = texts.get(EventField.TIME);
    String angle = texts.get(EventField.ANGLE);
    String breakaway = texts.get(EventField.BREAKAWAY);
    Digits torque = digits(EventField.TORQUE, required(EventField.TORQUE));
    TorqueUnit unit = unit(required(EventField.UNIT));
    try {
      return new TorqueEvent(
          wrench,
          number(),
          time == null ? Optional.empty() : Optional.of(clock.read(time)),
          new Torque(torque, unit),
          angle == null
              ? Optional.empty()
              : Optional.of(new Angle(digits(EventField.ANGLE, angle))),
          breakaway == null
              ? Optional.empty()
              : Optional.of(new Torque(digits(EventField.BREAKAWAY, breakaway), unit)),
          direction(),
          Optional.ofNullable(texts.get(EventField.FASTENER)),
          Optional.ofNullable(texts.get(EventField.OPERATOR)));
    } catch (IllegalArgumentException e) {
      // The records' own sentences: every text they quote is bounded by its form already.
      throw new Refusal(e.getMessage());
    }
  }

  private String required(EventField field) throws Refusal {
    String text = texts.get(field);
    if (text == null) {
      throw new Refusal("the event has no " + field.code() + ", which is required");
    }
    return text;
  }

  private OptionalLong number() throws Refusal {
    String text = texts.get(EventField.EVENT);
    if (text == null) {
      return OptionalLong.empty();
    }
    try {
      if (text.length() <= 64 && text.chars().allMatch(c -> c >= '0' && c <= '9')) {
        return OptionalLong.of(Long.parseLong(text));
      }
    } catch (NumberFormatException e) {
      // Empty, or above the largest long: refused below like any other text.
    }
    throw new Refusal(
        "event "
            + Reason.shown(text)
            + " is no event number; a whole number from 0 to "
            + Long.MAX_VALUE
            + " is allowed");
  }

  private static Digits digits(EventField field, String text) throws Refusal {
    try {
      return new Digits(text);
    } catch (IllegalArgumentException e) {
      throw new Refusal(
          field.code()
              + " "
              + Reason.shown(text)
              + " is not a decimal number; allowed are forms like 32.54, 5 or 1.2e1, with at most"
              + " 24 digits before and after the point");
    }
  }

  private static TorqueUnit unit(String text) throws Refusal {
    Optional<TorqueUnit> unit = TorqueUnit.of(text);
    if (unit.isEmpty()) {
      throw new Refusal("unit " + Reason.shown(text) + " is unknown; " + UnitSpelling.hint(text));
    }
    return unit.get();
  }

  private Direction direction() throws Refusal {
    String text = texts.getOrDefault(EventField.DIRECTION, Direction.CW.code());
    try {
      return Direction.of(text);
    } catch (IllegalArgumentException e) {
      throw new Refusal("direction " + Reason.shown(text) + " is unknown; cw or ccw is allowed");
    }
  }
}
