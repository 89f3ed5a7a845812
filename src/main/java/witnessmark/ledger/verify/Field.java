package witnessmark.ledger.verify;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;

/** The texts of an entry that rows of other tables follow from. */
enum Field {
  KIND("kind"),
  AT("at"),
  JOB("job"),
  STATION("station"),
  FASTENER("fastener"),
  WRENCH("wrench"),
  OPERATOR("operator"),
  BY("by"),
  VERDICT("verdict"),
  EFFECT("effect"),
  FINGERPRINT("fingerprint"),
  UNIT("unit"),
  PROCEDURE("procedure"),
  REVISION("revision"),
  EVENT_WRENCH("wrench"),
  EVENT_OPERATOR("operator");

  static final int COUNT = values().length;

  private static final Map<String, Field> OF_ENTRY = new HashMap<>();
  private static final Map<String, Field> OF_EVENT = new HashMap<>();

  static {
    Arrays.stream(values()).forEach(f -> (f.ofEvent() ? OF_EVENT : OF_ENTRY).put(f.text, f));
  }

  private final String text;

  Field(String text) {
    this.text = text;
  }

  private boolean ofEvent() {
    return this == EVENT_WRENCH || this == EVENT_OPERATOR;
  }

  /** The text of that name in the entry itself, null where none is read. */
  static Field ofEntry(String name) {
    return OF_ENTRY.get(name);
  }

  /** The text of that name in the entry's event, null where none is read. */
  static Field ofEvent(String name) {
    return OF_EVENT.get(name);
  }

  /** Their names. */
  static Iterable<String> names() {
    return OF_ENTRY.keySet();
  }
}
