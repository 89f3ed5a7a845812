package witnessmark.ledger.verify;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import java.io.IOException;

/** Reads an entry's bytes, once from front to back, into its fields. */
final class EntryReader {
  private final JsonFactory json =
      JsonFactory.builder()
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          // UTF-8 whatever the first bytes look like.
          .disable(JsonFactory.Feature.CHARSET_DETECTION)
          .streamReadConstraints(
              StreamReadConstraints.builder().maxStringLength(Integer.MAX_VALUE).build())
          .build();

  private final PlainReader plain = new PlainReader();

  private boolean versionOne;

  /** Fills {@code into}; returns null, or a sentence that says why these bytes are no entry. */
  String read(byte[] bytes, EntryFields into) {
    return plain.read(bytes, into) ? null : parse(bytes, into);
  }

  /** The same of any bytes whatever, by a parser of all JSON. */
  String parse(byte[] bytes, EntryFields into) {
    into.clear();
    versionOne = false;
    // Nothing around the object: white space there would be bytes that nobody wrote.
    if (bytes.length < 2 || bytes[0] != '{' || bytes[bytes.length - 1] != '}') {
      return "expected one JSON object without anything around it, found other bytes";
    }
    try (JsonParser parser = json.createParser(bytes)) {
      parser.nextToken();
      fields(parser, into);
      if (parser.nextToken() != null) {
        return "expected one JSON object, found more after it";
      }
    } catch (JsonProcessingException e) {
      return "expected one JSON object, found: " + e.getOriginalMessage();
    } catch (IOException e) {
      return "expected one JSON object in UTF-8, found: " + e.getMessage();
    }
    if (!versionOne) {
      return "expected /v to be 1";
    }
    String kind = into.text(Field.KIND);
    return kind == null || kind.isEmpty() ? "expected /kind to be a text" : null;
  }

  private void fields(JsonParser parser, EntryFields into) throws IOException {
    String name;
    while ((name = parser.nextFieldName()) != null) {
      JsonToken token = parser.nextToken();
      Field field = token == JsonToken.VALUE_STRING ? Field.ofEntry(name) : null;
      if (field != null) {
        into.text(field, parser.getText());
      } else if (token == JsonToken.VALUE_NUMBER_INT && name.equals("v")) {
        versionOne = parser.getText().equals("1");
      } else if (token == JsonToken.START_OBJECT && name.equals("event")) {
        event(parser, into);
      } else {
        pass(parser, token);
      }
    }
  }

  private static void event(JsonParser parser, EntryFields into) throws IOException {
    String name;
    while ((name = parser.nextFieldName()) != null) {
      JsonToken token = parser.nextToken();
      Field field = token == JsonToken.VALUE_STRING ? Field.ofEvent(name) : null;
      if (field != null) {
        into.text(field, parser.getText());
      } else if (token == JsonToken.VALUE_NUMBER_INT && name.equals("number")) {
        into.eventNumber(integer(parser));
      } else {
        pass(parser, token);
      }
    }
  }

  /** The integer where an SQLite INTEGER can hold it. */
  private static Long integer(JsonParser parser) throws IOException {
    JsonParser.NumberType type = parser.getNumberType();
    return type == JsonParser.NumberType.BIG_INTEGER ? null : (Long) parser.getLongValue();
  }

  /** Goes past a value, reading all of it: a fault inside is a fault of the entry. */
  private static void pass(JsonParser parser, JsonToken token) throws IOException {
    if (token == JsonToken.VALUE_STRING) {
      finishText(parser);
    } else if (token.isStructStart()) {
      int depth = 1;
      while (depth > 0) {
        JsonToken next = parser.nextToken();
        if (next == JsonToken.VALUE_STRING) {
          finishText(parser);
        } else if (next.isStructStart()) {
          depth++;
        } else if (next.isStructEnd()) {
          depth--;
        }
      }
    }
  }

  /** Jackson reads a text only when asked to; its faults show only then. */
  private static void finishText(JsonParser parser) throws IOException {
    parser.finishToken();
  }
}
