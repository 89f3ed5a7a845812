package witnessmark.decode;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import java.io.IOException;
import java.nio.charset.Charset;
import java.util.ArrayList;
import java.util.List;

/** A payload of JSON: one object, or an array of elements that each stand on their own. */
final class JsonPayload {
  static final int LONGEST = 4 * 1024 * 1024;
  static final int MOST = 10_000;

  /** Where reading stops; an element may be nested far less deep. */
  private static final int DEEPEST = 1000;

  // A long number or name is a fault of its element, which the element's length limit finds, and
  // not of the whole payload; the symbol table fails on crafted names and gains nothing here.
  private static final JsonFactory JSON =
      JsonFactory.builder()
          .streamReadConstraints(
              StreamReadConstraints.builder()
                  .maxNestingDepth(DEEPEST)
                  .maxNumberLength(LONGEST)
                  .maxNameLength(LONGEST)
                  .maxStringLength(LONGEST)
                  .build())
          .disable(JsonFactory.Feature.CANONICALIZE_FIELD_NAMES)
          .disable(JsonFactory.Feature.INTERN_FIELD_NAMES)
          .build();

  /** Reads one element. */
  @FunctionalInterface
  interface ElementReader {
    Decoded read(String raw, Json value) throws Refusal;
  }

  private JsonPayload() {}

  /**
   * Decodes each element by the reader; at least one.
   *
   * @throws Refusal when the JSON itself is at fault, and so nothing of it is taken
   */
  static List<Decoded> decode(String text, Charset charset, ElementReader reader) throws Refusal {
    return elements(text, charset).stream().map(e -> decode(e, charset, reader)).toList();
  }

  private static Decoded decode(JsonElement element, Charset charset, ElementReader reader) {
    try {
      if (element.fault() != null) {
        throw new Refusal(element.fault());
      }
      return reader.read(element.raw(), element.value());
    } catch (Refusal e) {
      return new Malformed(e.getMessage(), Sample.of(element.raw().getBytes(charset)));
    }
  }

  private static List<JsonElement> elements(String text, Charset charset) throws Refusal {
    try (JsonParser parser = JSON.createParser(text.toCharArray())) {
      return elements(parser, text, charset);
    } catch (IOException e) {
      throw new IllegalStateException("reading from memory cannot fail", e);
    }
  }

  private static List<JsonElement> elements(JsonParser parser, String text, Charset charset)
      throws IOException, Refusal {
    try {
      List<JsonElement> elements = new ArrayList<>();
      JsonToken first = parser.nextToken();
      if (first == JsonToken.START_OBJECT) {
        elements.add(JsonElement.read(parser, text, charset));
      } else if (first == JsonToken.START_ARRAY) {
        burst(parser, text, charset, elements);
      } else {
        throw new Refusal(
            "the payload is "
                + (first == null ? "empty" : "a single value")
                + "; a JSON object or an array of objects is allowed");
      }
      if (parser.nextToken() != null) {
        throw new Refusal(
            "something follows the JSON at character "
                + (parser.currentTokenLocation().getCharOffset() + 1)
                + "; one object or one array is allowed");
      }
      return elements;
    } catch (StreamConstraintsException e) {
      throw new Refusal(
          "an element is nested so deep that nothing of the payload could be read; at most "
              + JsonElement.DEEPEST
              + " levels are allowed");
    } catch (JsonProcessingException e) {
      throw new Refusal(
          "the payload is not JSON: it breaks near character "
              + (parser.currentLocation().getCharOffset() + 1)
              + "; a JSON object or an array of objects is allowed");
    }
  }

  private static void burst(
      JsonParser parser, String text, Charset charset, List<JsonElement> elements)
      throws IOException, Refusal {
    while (parser.nextToken() != JsonToken.END_ARRAY) {
      if (elements.size() == MOST) {
        throw new Refusal(
            "a burst of more than " + MOST + " elements; at most that many are allowed");
      }
      elements.add(JsonElement.read(parser, text, charset));
    }
    if (elements.isEmpty()) {
      throw new Refusal("an empty burst; 1 to " + MOST + " elements are allowed");
    }
  }
}
