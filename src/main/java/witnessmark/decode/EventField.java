package witnessmark.decode;

import java.util.Arrays;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** A field of a torque event, or of a scan, as messages and profiles name it. */
public enum EventField {
  WRENCH,
  EVENT,
  TIME,
  TORQUE,
  UNIT,
  ANGLE,
  BREAKAWAY,
  DIRECTION,
  FASTENER,
  OPERATOR,
  SCAN;

  /** The fields of a torque event. */
  static final Set<EventField> OF_EVENTS =
      Collections.unmodifiableSet(EnumSet.complementOf(EnumSet.of(SCAN)));

  /** The fields of a scan. */
  static final Set<EventField> OF_SCANS = Collections.unmodifiableSet(EnumSet.of(SCAN, OPERATOR));

  /** The name in messages and profiles, e.g. {@code wrench}. */
  public String code() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The field of that name, or empty; letter case counts. */
  public static Optional<EventField> of(String code) {
    return Arrays.stream(values()).filter(f -> f.code().equals(code)).findFirst();
  }

  /** Whether its text is a decimal number. */
  boolean decimal() {
    return this == TORQUE || this == ANGLE || this == BREAKAWAY;
  }

  /** All names. */
  public static List<String> codes() {
    return Arrays.stream(values()).map(EventField::code).toList();
  }
}
