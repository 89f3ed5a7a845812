package witnessmark.decode;

import com.google.re2j.Matcher;
import com.google.re2j.Pattern;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Set;

/**
 * A pattern that a frame's whole text matches; groups named like fields give them.
 *
 * @param pattern of a kind that takes linear time
 */
public record Shape(Pattern pattern) implements MessageForm {
  @Override
  public Set<EventField> gives() {
    Set<EventField> fields = EnumSet.noneOf(EventField.class);
    pattern.namedGroups().keySet().forEach(g -> EventField.of(g).ifPresent(fields::add));
    return fields;
  }

  Map<EventField, String> pick(String frame) throws Refusal {
    Matcher m = pattern.matcher(frame);
    if (!m.matches()) {
      throw new Refusal(
          "the frame " + Reason.shown(frame) + " does not match the profile's pattern");
    }
    Map<EventField, String> texts = new EnumMap<>(EventField.class);
    for (EventField field : gives()) {
      String text = m.group(field.code());
      if (text != null) {
        texts.put(field, text);
      }
    }
    return texts;
  }
}
