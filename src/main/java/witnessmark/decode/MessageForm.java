package witnessmark.decode;

import java.util.Set;

/** Where in a frame's content the fields of an event or a scan stand. */
public sealed interface MessageForm permits Columns, Shape, Pointers {
  /** The fields that this form can give. */
  Set<EventField> gives();

  /** Whether what it gives are scans. */
  default boolean scans() {
    return gives().contains(EventField.SCAN);
  }
}
