package witnessmark.ledger.verify;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** A proof in JSON taken apart, with every value of the form it must have. */
final class JsonProof {
  private static final JsonFactory JSON =
      JsonFactory.builder()
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          // UTF-8 whatever the first bytes look like.
          .disable(JsonFactory.Feature.CHARSET_DETECTION)
          .streamReadConstraints(
              StreamReadConstraints.builder().maxStringLength(ProofCheck.LARGEST).build())
          .build();

  /** An entry of a bundle. */
  record Item(long n, byte[] leaf, List<byte[]> path) {}

  /** The texts {@code checkpoint}, {@code old} and {@code new} that it has. */
  final Map<String, String> notes = new HashMap<>();

  /** Null when it has none. */
  List<Item> entries;

  /** Entries by which the log's keys vouch for each other; none where it has none. */
  List<Item> vouchers = List.of();

  /** Null when it has none. */
  List<byte[]> path;

  private boolean versionOne;

  private JsonProof() {}

  static JsonProof read(byte[] bytes) throws ProofFault {
    JsonProof proof = new JsonProof();
    try (JsonParser parser = JSON.createParser(bytes)) {
      expect(parser.nextToken(), JsonToken.START_OBJECT, "the file");
      proof.fields(parser);
      if (parser.nextToken() != null) {
        throw new ProofFault("expected one JSON object, found more after it");
      }
    } catch (JsonProcessingException e) {
      throw new ProofFault("expected JSON, found: " + e.getOriginalMessage());
    } catch (IOException e) {
      throw new ProofFault("expected JSON in UTF-8, found: " + e.getMessage());
    }
    if (!proof.versionOne) {
      throw new ProofFault("expected \"v\" to be 1");
    }
    return proof;
  }

  private void fields(JsonParser parser) throws IOException, ProofFault {
    String name;
    while ((name = parser.nextFieldName()) != null) {
      parser.nextToken();
      switch (name) {
        case "v" -> versionOne = number(parser, name) == 1;
        case "checkpoint", "old", "new" -> notes.put(name, text(parser, name));
        case "entries" -> entries = entries(parser, name);
        case "vouchers" -> vouchers = entries(parser, name);
        case "path" -> path = path(parser, name);
        default -> throw unknown(name);
      }
    }
  }

  private static List<Item> entries(JsonParser parser, String name) throws IOException, ProofFault {
    expect(parser.currentToken(), JsonToken.START_ARRAY, '"' + name + '"');
    List<Item> items = new ArrayList<>();
    while (parser.nextToken() != JsonToken.END_ARRAY) {
      items.add(item(parser, "element " + items.size() + " of \"" + name + '"'));
    }
    return items;
  }

  private static Item item(JsonParser parser, String where) throws IOException, ProofFault {
    expect(parser.currentToken(), JsonToken.START_OBJECT, where);
    Long n = null;
    byte[] leaf = null;
    List<byte[]> path = null;
    String name;
    while ((name = parser.nextFieldName()) != null) {
      parser.nextToken();
      switch (name) {
        case "entry" -> n = number(parser, name);
        case "leaf" -> leaf = bytes(parser, name);
        case "path" -> path = path(parser, name);
        default -> throw unknown(name);
      }
    }
    if (n == null || leaf == null || path == null) {
      throw new ProofFault("expected \"entry\", \"leaf\" and \"path\" in " + where);
    }
    return new Item(n, leaf, path);
  }

  private static List<byte[]> path(JsonParser parser, String name) throws IOException, ProofFault {
    expect(parser.currentToken(), JsonToken.START_ARRAY, '"' + name + '"');
    List<byte[]> path = new ArrayList<>();
    while (parser.nextToken() != JsonToken.END_ARRAY) {
      if (path.size() == PathCheck.LONGEST) {
        throw new ProofFault("expected at most " + PathCheck.LONGEST + " hashes in a path");
      }
      path.add(bytes(parser, name));
    }
    return path;
  }

  private static byte[] bytes(JsonParser parser, String name) throws IOException, ProofFault {
    String base64 = text(parser, name);
    byte[] bytes = ExactBase64.decode(base64);
    if (bytes == null) {
      throw new ProofFault("expected base64 in \"" + name + "\", found " + Cells.show(base64));
    }
    return bytes;
  }

  private static String text(JsonParser parser, String name) throws IOException, ProofFault {
    expect(parser.currentToken(), JsonToken.VALUE_STRING, '"' + name + '"');
    return parser.getText();
  }

  private static long number(JsonParser parser, String name) throws IOException, ProofFault {
    expect(parser.currentToken(), JsonToken.VALUE_NUMBER_INT, '"' + name + '"');
    return Decimal.read(parser.getText(), '"' + name + '"');
  }

  private static void expect(JsonToken found, JsonToken expected, String where) throws ProofFault {
    if (found != expected) {
      throw new ProofFault(
          "expected " + word(expected) + " in " + where + ", found " + word(found));
    }
  }

  private static String word(JsonToken token) {
    if (token == null) {
      return "nothing";
    }
    return switch (token) {
      case START_OBJECT -> "an object";
      case START_ARRAY -> "an array";
      case VALUE_STRING -> "a text";
      case VALUE_NUMBER_INT -> "an integer";
      default -> "something else";
    };
  }

  private static ProofFault unknown(String name) {
    return new ProofFault("found a field " + Cells.show(name) + " that no proof has");
  }
}
