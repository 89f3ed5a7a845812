package wrenchsim.wire;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.Optional;

/**
 * Reading of the JSON that a bridge publishes: objects, texts, and decimals without lost digits.
 */
final class JsonText {
  private static final JsonMapper MAPPER =
      JsonMapper.builder().enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS).build();

  private JsonText() {}

  /** The object in the payload of a topic's message. */
  static JsonNode object(byte[] payload, String what) throws MalformedMessage {
    JsonNode node;
    try {
      node = MAPPER.readTree(payload);
    } catch (IOException e) {
      throw new MalformedMessage(what + " is not JSON: " + e.getMessage());
    }
    if (node == null || !node.isObject()) {
      throw new MalformedMessage(what + " is not a JSON object");
    }
    return node;
  }

  static Optional<String> text(JsonNode object, String field) {
    JsonNode value = object.get(field);
    return value == null || value.isNull() ? Optional.empty() : Optional.of(value.asText());
  }

  static String required(JsonNode object, String field, String what) throws MalformedMessage {
    return text(object, field)
        .orElseThrow(() -> new MalformedMessage(what + " has no field '" + field + "'"));
  }

  static Optional<BigDecimal> decimal(JsonNode object, String field, String what)
      throws MalformedMessage {
    Optional<String> text = text(object, field);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(new BigDecimal(text.get()));
    } catch (NumberFormatException e) {
      throw new MalformedMessage(
          "%s has '%s' in '%s', where a decimal belongs".formatted(what, text.get(), field));
    }
  }

  static Optional<Long> whole(JsonNode object, String field) {
    JsonNode value = object.get(field);
    return value == null || !value.canConvertToLong()
        ? Optional.empty()
        : Optional.of(value.asLong());
  }
}
