package witnessmark.docs;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SpecVersion.VersionFlag;
import com.networknt.schema.ValidationMessage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;

/** The published JSON Schemas, in a validator that is not ours. */
public final class Schemas {
  private static final String ID = "https://witnessmark.local/schemas/v1/";
  private static final Path DIRECTORY = Path.of("docs/schemas");
  private static final JsonMapper JSON =
      JsonMapper.builder().enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS).build();
  private static final JsonSchemaFactory FACTORY =
      JsonSchemaFactory.getInstance(
          VersionFlag.V202012,
          b -> b.schemaMappers(m -> m.mapPrefix(ID, DIRECTORY.toUri().toString())));
  private static final Map<String, JsonSchema> COMPILED = new ConcurrentHashMap<>();

  private Schemas() {}

  /** What the schema of that name has against the text; nothing when it validates. */
  public static List<String> faults(String schema, String json) {
    return faults(schema, parse(json));
  }

  /** What the schema of that name has against the message; nothing when it validates. */
  public static List<String> faults(String schema, byte[] json) {
    return faults(schema, new String(json, StandardCharsets.UTF_8));
  }

  static List<String> faults(String schema, JsonNode json) {
    return COMPILED
        .computeIfAbsent(schema, s -> FACTORY.getSchema(SchemaLocation.of(ID + s + ".json")))
        .validate(json)
        .stream()
        .map(ValidationMessage::toString)
        .toList();
  }

  /** The text as a tree, decimals exact. */
  public static JsonNode parse(String json) {
    try {
      return JSON.readTree(json);
    } catch (JsonProcessingException e) {
      throw new IllegalArgumentException(json, e);
    }
  }

  /** The schema file as a tree. */
  public static JsonNode file(String schema) {
    try {
      return JSON.readTree(Files.readString(DIRECTORY.resolve(schema + ".json")));
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  /** The names of the properties of the (sub)schema at the pointer. */
  public static Set<String> properties(String schema, String pointer) {
    Set<String> names = new TreeSet<>();
    file(schema).at(pointer + "/properties").fieldNames().forEachRemaining(names::add);
    return names;
  }

  /** The texts of the list at the pointer. */
  public static List<String> texts(String schema, String pointer) {
    List<String> texts = new java.util.ArrayList<>();
    file(schema).at(pointer).forEach(t -> texts.add(t.textValue()));
    return texts;
  }
}
