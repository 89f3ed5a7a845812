package witnessmark.decode;

import java.util.Set;

/** Where in a frame's content the fields of an event stand. */
public sealed interface MessageForm permits Columns, Shape, Pointers {
  /** The fields that this form can give. */
  Set<EventField> gives();
}
