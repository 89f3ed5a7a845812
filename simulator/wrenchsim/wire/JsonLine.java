package wrenchsim.wire;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Optional;

/** A JSON object on one line, its fields in the order they were put. */
public final class JsonLine {
  private static final JsonMapper MAPPER = new JsonMapper();

  private final ObjectNode object = MAPPER.createObjectNode();

  /** Puts a text field. */
  public JsonLine put(String name, String value) {
    object.put(name, value);
    return this;
  }

  /** Puts a whole number. */
  public JsonLine put(String name, long value) {
    object.put(name, value);
    return this;
  }

  /** Puts a text field if there is one. */
  public JsonLine putText(String name, Optional<String> value) {
    value.ifPresent(v -> object.put(name, v));
    return this;
  }

  /** Puts a whole number if there is one. */
  public JsonLine putNumber(String name, Optional<Long> value) {
    value.ifPresent(v -> object.put(name, v));
    return this;
  }

  /** Puts {@code true}, or nothing. */
  public JsonLine putTrue(String name, boolean value) {
    if (value) {
      object.put(name, true);
    }
    return this;
  }

  /** The line, without its end. */
  @Override
  public String toString() {
    try {
      return MAPPER.writeValueAsString(object);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("an object of texts and numbers is always writable", e);
    }
  }
}
