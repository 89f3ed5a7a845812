package witnessmark.entry;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import witnessmark.torque.Angle;
import witnessmark.torque.Digits;
import witnessmark.torque.Direction;
import witnessmark.torque.Torque;
import witnessmark.torque.TorqueEvent;
import witnessmark.torque.Verdict;

/**
 * Reads torque entries token by token, several times as fast as by their record's components: a log
 * holds little else. It takes what this program writes and leaves everything else to the general
 * reader, which also says what is wrong with it.
 */
final class TorqueReader {
  private static final JsonFactory FACTORY = new JsonFactory();

  private final JsonParser json;
  private final Map<String, String> texts = new HashMap<>(64);
  private final Map<String, Boolean> flags = new HashMap<>(4);
  private final Map<String, List<String>> lists = new HashMap<>(8);
  private TorqueEvent event;
  private int version;

  private TorqueReader(JsonParser json) {
    this.json = json;
  }

  /** The entry that those bytes state; empty where the general reader is to read them. */
  static Optional<Entry> read(byte[] bytes) {
    try (JsonParser json = FACTORY.createParser(bytes)) {
      TorqueReader reader = new TorqueReader(json);
      return reader.taken() ? reader.entry() : Optional.empty();
    } catch (IOException | IllegalArgumentException | java.time.DateTimeException e) {
      return Optional.empty();
    }
  }

  /** Whether all fields could be taken, each once. */
  private boolean taken() throws IOException {
    if (json.nextToken() != JsonToken.START_OBJECT
        || !"kind".equals(json.nextFieldName())
        || !"torque".equals(json.nextTextValue())) {
      return false;
    }
    for (String name = json.nextFieldName(); name != null; name = json.nextFieldName()) {
      if (!field(name, json.nextToken())) {
        return false;
      }
    }
    return json.currentToken() == JsonToken.END_OBJECT && json.nextToken() == null;
  }

  private boolean field(String name, JsonToken token) throws IOException {
    switch (token) {
      case VALUE_STRING:
        return texts.put(name, json.getText()) == null;
      case VALUE_TRUE:
      case VALUE_FALSE:
        return flags.put(name, json.getBooleanValue()) == null;
      case START_ARRAY:
        return lists.put(name, list()) == null;
      case START_OBJECT:
        return name.equals("event") && event == null && event();
      case VALUE_NUMBER_INT:
        version = json.getIntValue();
        return name.equals("v");
      default:
        return false;
    }
  }

  private List<String> list() throws IOException {
    List<String> found = new ArrayList<>();
    while (json.nextToken() == JsonToken.VALUE_STRING) {
      found.add(json.getText());
    }
    if (json.currentToken() != JsonToken.END_ARRAY) {
      throw new IllegalArgumentException("a list of something else than texts");
    }
    return found;
  }

  private boolean event() throws IOException {
    Map<String, String> sent = new HashMap<>(16);
    OptionalLong number = OptionalLong.empty();
    for (String name = json.nextFieldName(); name != null; name = json.nextFieldName()) {
      JsonToken token = json.nextToken();
      if (sent.containsKey(name)) {
        return false;
      } else if (token == JsonToken.VALUE_NUMBER_INT && name.equals("number")) {
        number = OptionalLong.of(json.getLongValue());
      } else if (token == JsonToken.VALUE_STRING && !name.equals("number")) {
        sent.put(name, json.getText());
        continue;
      } else if (token != JsonToken.VALUE_NULL) {
        return false;
      }
      sent.put(name, null);
    }
    sent.remove("number");
    event =
        new TorqueEvent(
            needed(sent, "wrench"),
            number,
            given(sent, "time").map(Moments::parse),
            Torque.parse(needed(sent, "torque")),
            given(sent, "angle").map(Angle::of),
            given(sent, "breakaway").map(Torque::parse),
            Direction.of(needed(sent, "direction")),
            given(sent, "fastener"),
            given(sent, "operator"));
    return sent.isEmpty();
  }

  private Optional<Entry> entry() {
    Entry.TorqueTaken taken =
        new Entry.TorqueTaken(
            Moments.parse(needed(texts, "at")),
            needed(texts, "station"),
            needed(texts, "source"),
            event,
            needed(texts, "raw"),
            needed(texts, "fingerprint"),
            timing(),
            given(texts, "scanned"),
            given(texts, "operator"),
            given(texts, "job"),
            judged());
    boolean known = event != null && version == 1;
    return known && texts.isEmpty() && flags.isEmpty() && lists.isEmpty()
        ? Optional.of(taken)
        : Optional.empty();
  }

  private Timing timing() {
    return new Timing(
        Moments.parse(needed(texts, "moment")),
        needed(texts, "clock"),
        given(texts, "offset").map(Digits::new),
        Optional.ofNullable(flags.remove("late")),
        Optional.ofNullable(flags.remove("stored")),
        given(texts, "counter"));
  }

  private Judged judged() {
    return new Judged(
        given(texts, "fastener"),
        given(texts, "pass"),
        Words.of(Reason.class, needed(texts, "reason")),
        listed("alternatives"),
        listed("objections").stream().map(o -> Words.of(Objection.class, o)).toList(),
        given(texts, "verdict").map(Verdict::of),
        given(texts, "low"),
        given(texts, "high"),
        given(texts, "angleLow"),
        given(texts, "angleHigh"),
        given(texts, "angleTotal").map(Angle::of),
        given(texts, "atFastener"),
        given(texts, "rule").map(r -> Words.of(Rule.class, r)),
        given(texts, "guardFactor").map(Digits::new),
        given(texts, "guard"),
        Words.of(Effect.class, needed(texts, "effect")),
        listed("undoes"),
        needed(texts, "text"));
  }

  private List<String> listed(String name) {
    List<String> found = lists.remove(name);
    return found == null ? List.of() : found;
  }

  private static Optional<String> given(Map<String, String> fields, String name) {
    return Optional.ofNullable(fields.remove(name));
  }

  private static String needed(Map<String, String> fields, String name) {
    String value = fields.remove(name);
    if (value == null) {
      throw new IllegalArgumentException("no " + name);
    }
    return value;
  }
}
