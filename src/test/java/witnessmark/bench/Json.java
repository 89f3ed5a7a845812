package witnessmark.bench;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.Map;
import java.util.TreeMap;

/** JSON as a reader outside sees it. */
public final class Json {
  private static final ObjectMapper MAPPER = new ObjectMapper();

  private Json() {}

  /** The document; fails where it is none. */
  public static JsonNode of(String text) {
    try {
      return MAPPER.readTree(text);
    } catch (JsonProcessingException e) {
      throw new AssertionError("no JSON: " + text, e);
    }
  }

  /**
   * An object's fields by name, simple values as their text, others as JSON: {@code 57} and {@code
   * "57"} look alike here.
   */
  public static Map<String, String> fields(JsonNode object) {
    Map<String, String> fields = new TreeMap<>();
    object
        .properties()
        .forEach(
            f ->
                fields.put(
                    f.getKey(),
                    f.getValue().isContainerNode()
                        ? f.getValue().toString()
                        : f.getValue().asText()));
    return fields;
  }
}
