package witnessmark.decode;

import java.util.EnumMap;
import java.util.Map;
import java.util.Set;

/**
 * A JSON Pointer a field, into one JSON object an event.
 *
 * @param pointers by field
 */
public record Pointers(Map<EventField, Pointer> pointers) implements MessageForm {
  public Pointers {
    pointers = Map.copyOf(pointers);
  }

  @Override
  public Set<EventField> gives() {
    return pointers.keySet();
  }

  Map<EventField, String> pick(Json value) throws Refusal {
    if (!(value instanceof Json.Fields)) {
      throw new Refusal("an event is " + value.kind() + "; a JSON object is allowed");
    }
    Map<EventField, String> texts = new EnumMap<>(EventField.class);
    for (Map.Entry<EventField, Pointer> entry : pointers.entrySet()) {
      Json found = entry.getValue().in(value).orElseGet(Json.Nothing::new);
      if (found instanceof Json.Text t) {
        texts.put(entry.getKey(), t.text());
      } else if (found instanceof Json.Number n) {
        texts.put(entry.getKey(), n.digits());
      } else if (!(found instanceof Json.Nothing)) {
        throw new Refusal(
            entry.getKey().code() + " is " + found.kind() + "; a text or a number is allowed");
      }
    }
    return texts;
  }
}
