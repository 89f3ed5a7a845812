package witnessmark.decode;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.nio.charset.Charset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * One event's or scan's own JSON within a payload.
 *
 * @param raw its text exactly as received
 * @param value what it says; {@code null} where {@code fault} says why it was not read
 * @param fault why it was not read, or {@code null}
 */
record JsonElement(String raw, Json value, String fault) {
  static final int LONGEST = 8 * 1024;
  static final int DEEPEST = 32;

  /** Reads the element whose first token is the parser's current one, up to its last token. */
  static JsonElement read(JsonParser parser, String text, Charset charset) throws IOException {
    Walk walk = new Walk(parser);
    Json value = walk.value(1);
    parser.finishToken();
    String raw = text.substring((int) walk.start, (int) parser.currentLocation().getCharOffset());
    if (walk.fault == null && raw.getBytes(charset).length > LONGEST) {
      walk.fault = Walk.TOO_LONG;
    }
    return new JsonElement(raw, walk.fault == null ? value : null, walk.fault);
  }

  /** Builds the value until the first fault, then only walks on to the element's end. */
  private static final class Walk {
    static final String TOO_LONG =
        "an element is longer than " + LONGEST + " bytes; at most that many are allowed";

    private final JsonParser parser;
    private final long start;
    private String fault;

    Walk(JsonParser parser) {
      this.parser = parser;
      this.start = parser.currentTokenLocation().getCharOffset();
    }

    Json value(int depth) throws IOException {
      if (fault == null && depth > DEEPEST) {
        fault =
            "an element is nested deeper than "
                + DEEPEST
                + " levels; at most that many are allowed";
      }
      // A character takes a byte or more, so more characters are too many bytes.
      if (fault == null && parser.currentLocation().getCharOffset() - start > LONGEST) {
        fault = TOO_LONG;
      }
      if (fault != null) {
        parser.skipChildren();
        return new Json.Nothing();
      }
      JsonToken token = parser.currentToken();
      if (token == JsonToken.START_OBJECT) {
        return fields(depth);
      }
      if (token == JsonToken.START_ARRAY) {
        return items(depth);
      }
      return scalar(token);
    }

    private Json scalar(JsonToken token) throws IOException {
      if (token == JsonToken.VALUE_STRING) {
        return new Json.Text(parser.getText());
      }
      if (token.isNumeric()) {
        return new Json.Number(parser.getText());
      }
      return token.isBoolean() ? new Json.Truth(token == JsonToken.VALUE_TRUE) : new Json.Nothing();
    }

    private Json items(int depth) throws IOException {
      List<Json> items = new ArrayList<>();
      while (parser.nextToken() != JsonToken.END_ARRAY) {
        Json item = value(depth + 1);
        if (fault == null) {
          items.add(item);
        }
      }
      return new Json.Items(items);
    }

    private Json fields(int depth) throws IOException {
      Map<String, Json> fields = new LinkedHashMap<>();
      while (parser.nextToken() != JsonToken.END_OBJECT) {
        String name = parser.currentName();
        if (fault == null && fields.containsKey(name)) {
          fault = "the field " + Reason.shown(name) + " stands twice; once is allowed";
        }
        parser.nextToken();
        Json value = value(depth + 1);
        if (fault == null) {
          fields.put(name, value);
        }
      }
      return new Json.Fields(fields);
    }
  }
}
