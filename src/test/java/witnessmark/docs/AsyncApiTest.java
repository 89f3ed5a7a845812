package witnessmark.docs;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.config.ConfigFile;
import witnessmark.link.mqtt.MqttSettings;

class AsyncApiTest {
  private static final Path DOCUMENT = Path.of("docs/asyncapi.json");

  @TempDir private Path temp;

  private static JsonNode read(Path file) throws IOException {
    return Schemas.parse(Files.readString(file));
  }

  /** Follows a reference from the file it stands in, by file name and JSON Pointer. */
  private static JsonNode follow(Path from, String reference) throws IOException {
    URI uri = URI.create(reference.replace("$", "%24"));
    Path file = uri.getPath().isEmpty() ? from : from.resolveSibling(uri.getPath()).normalize();
    String pointer = uri.getFragment() == null ? "" : uri.getFragment();
    return Files.exists(file) ? read(file).at(pointer) : MissingNode.getInstance();
  }

  private static void references(JsonNode node, Set<String> found) {
    if (node.isObject() && node.path("$ref").isTextual()) {
      found.add(node.path("$ref").textValue());
    }
    node.forEach(child -> references(child, found));
  }

  @Test
  void everyReferenceLeadsSomewhere() throws IOException {
    List<Path> files;
    try (var schemas = Files.list(Path.of("docs/schemas"))) {
      files = new java.util.ArrayList<>(schemas.toList());
    }
    files.add(DOCUMENT);
    assertThat(files).hasSize(12);
    for (Path file : files) {
      Set<String> references = new TreeSet<>();
      references(read(file), references);
      for (String reference : references) {
        assertThat(follow(file, reference).isMissingNode())
            .as("%s refers to %s", file, reference)
            .isFalse();
      }
    }
  }

  @Test
  void theDocumentIsOfTheVersionItSaysAndUsesEveryMessageSchema() throws IOException {
    JsonNode document = read(DOCUMENT);
    assertThat(document.path("asyncapi").textValue()).isEqualTo("3.1.0");
    Set<String> schemas = new TreeSet<>();
    document
        .at("/components/messages")
        .forEach(
            m -> {
              assertThat(m.at("/payload/schemaFormat").textValue())
                  .isEqualTo("application/schema+json;version=draft-2020-12");
              schemas.add(m.at("/payload/schema/$ref").textValue());
            });
    assertThat(schemas)
        .containsExactlyInAnyOrder(
            "./schemas/torque-event.json",
            "./schemas/torque-burst.json",
            "./schemas/scan.json",
            "./schemas/scan-burst.json",
            "./schemas/verdict.json",
            "./schemas/scanned.json",
            "./schemas/expect.json",
            "./schemas/checkpoint.json",
            "./schemas/health.json");
  }

  @Test
  void everySchemaIsCalledByItsFile() throws IOException {
    try (var schemas = Files.list(Path.of("docs/schemas"))) {
      for (Path file : schemas.toList()) {
        assertThat(read(file).path("$id").textValue())
            .isEqualTo("https://witnessmark.local/schemas/v1/" + file.getFileName());
        assertThat(read(file).path("$schema").textValue())
            .isEqualTo("https://json-schema.org/draft/2020-12/schema");
      }
    }
  }

  @Test
  void theTopicsReadAreThoseOfTheProgram() throws IOException {
    Path config = temp.resolve("shop.toml");
    Files.writeString(
        config,
        "[bridge]\nname = \"shop-1\"\n[[mqtt]]\nname = \"shop\"\nurl = \"tcp://127.0.0.1:1883\"\n");
    MqttSettings broker = ConfigFile.read(config, Map.of()).brokers().get(0).settings();
    assertThat(topics("receive", "{station}", "+"))
        .containsExactlyInAnyOrderElementsOf(broker.subscriptions());
    assertThat(topics("send", "{bridge}", "shop-1")).contains(broker.willTopic());
    assertThat(Schemas.faults("health", broker.will())).isEmpty();
  }

  /** The addresses of the operations of that kind, a placeholder filled. */
  static Set<String> topics(String action, String placeholder, String value) throws IOException {
    Set<String> topics = new TreeSet<>();
    for (JsonNode operation : read(DOCUMENT).path("operations")) {
      if (operation.path("action").textValue().equals(action)) {
        JsonNode channel = follow(DOCUMENT, operation.at("/channel/$ref").textValue());
        topics.add(channel.path("address").textValue().replace(placeholder, value));
        assertThat(operation.at("/bindings/mqtt/qos").intValue()).isEqualTo(1);
      }
    }
    return topics;
  }
}
