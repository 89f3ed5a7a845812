package witnessmark.ledger.verify;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import java.io.IOException;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

/** What an entry says about a decision, who made it, and with which key. */
final class DecisionFields {
  private static final JsonFactory JSON =
      JsonFactory.builder()
          .disable(JsonFactory.Feature.CHARSET_DETECTION)
          .streamReadConstraints(
              StreamReadConstraints.builder().maxStringLength(Integer.MAX_VALUE).build())
          .build();

  private static final Set<String> TEXTS =
      Set.of("kind", "by", "operator", "role", "cause", "publicKey", "signature", "disposition");

  private final Map<String, String> texts = new HashMap<>();
  private final Map<String, JsonToken> members = new HashMap<>();
  private final Set<String> roles = new HashSet<>();
  private long key = -1;

  private DecisionFields() {}

  /** Reads the bytes of an entry that is known to be one JSON object. */
  static DecisionFields of(byte[] bytes) {
    DecisionFields fields = new DecisionFields();
    try (JsonParser parser = JSON.createParser(bytes)) {
      parser.nextToken();
      String name;
      while ((name = parser.nextFieldName()) != null) {
        fields.take(name, parser.nextToken(), parser);
      }
    } catch (IOException e) {
      throw new IllegalStateException("an entry that was read once cannot be read again", e);
    }
    return fields;
  }

  private void take(String name, JsonToken token, JsonParser parser) throws IOException {
    members.put(name, token);
    if (token == JsonToken.VALUE_STRING && TEXTS.contains(name)) {
      texts.put(name, parser.getText());
    } else if (token == JsonToken.VALUE_NUMBER_INT && name.equals("key")) {
      key =
          parser.getNumberType() == JsonParser.NumberType.BIG_INTEGER ? -1 : parser.getLongValue();
    } else if (token == JsonToken.START_ARRAY && name.equals("roles")) {
      roles(parser);
    } else {
      parser.skipChildren();
    }
  }

  private void roles(JsonParser parser) throws IOException {
    for (JsonToken t = parser.nextToken(); t != JsonToken.END_ARRAY; t = parser.nextToken()) {
      if (t == JsonToken.VALUE_STRING) {
        roles.add(parser.getText());
      }
      parser.skipChildren();
    }
  }

  /** The text of that name; empty where there is none, which names nobody and nothing. */
  String text(String name) {
    return texts.getOrDefault(name, "");
  }

  boolean signed() {
    return texts.containsKey("signature");
  }

  /** The roles that it gives; a technician's where it names none, as older entries do. */
  Set<String> roles() {
    return roles.isEmpty() ? Set.of("technician") : Set.copyOf(roles);
  }

  /** Whether it says anything of roles, as every program does that knows of them. */
  boolean namesRoles() {
    return !roles.isEmpty();
  }

  boolean quality() {
    return roles.contains("quality");
  }

  /** What stands first at the member of that name; null where there is none. */
  JsonToken member(String name) {
    return members.get(name);
  }

  /** The entry that enrolled the key; -1 where none is named. */
  long key() {
    return key;
  }
}
