package witnessmark.doctor;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.bench.FreePort;
import witnessmark.bench.Json;
import witnessmark.bench.Mosquitto;
import witnessmark.bench.Program;
import witnessmark.bench.Workshop;

/** A shop with a broker, and what the doctor finds there. */
abstract class Patient {
  @TempDir Path directory;
  final int port = FreePort.next();
  Mosquitto broker;
  Workshop shop;

  @BeforeEach
  void begin() {
    broker = Mosquitto.start(directory);
    shop = Workshop.furnished(directory).on(broker).http(port);
  }

  @AfterEach
  void end() {
    broker.close();
  }

  /** All findings, and that the exit status agrees with them. */
  List<JsonNode> findings(String... options) {
    List<String> line = new ArrayList<>(List.of("doctor", "--json"));
    line.addAll(List.of(options));
    Program.Ended ended = shop.attempt(line.toArray(String[]::new));
    List<JsonNode> all = StreamSupport.stream(Json.of(ended.out()).spliterator(), false).toList();
    boolean bad = all.stream().anyMatch(f -> f.path("mark").asText().equals("bad"));
    assertThat(ended.status()).as(ended.out() + ended.err()).isEqualTo(bad ? 1 : 0);
    assertThat(ended.err()).isEmpty();
    return all;
  }

  /** What is bad, as {@code area: found -> next}. */
  List<String> bad(String... options) {
    return marked("bad", findings(options));
  }

  static List<String> marked(String mark, List<JsonNode> findings) {
    return findings.stream()
        .filter(f -> f.path("mark").asText().equals(mark))
        .map(
            f ->
                f.path("area").asText()
                    + ": "
                    + f.path("found").asText()
                    + " -> "
                    + f.path("next").asText())
        .toList();
  }

  String config() {
    return shop.config().toString();
  }

  void config(String name, String text) {
    shop.write(
        name,
        "[bridge]\nname = \"shop-1\"\n[[mqtt]]\nname = \"broker\"\nurl = \""
            + broker.url()
            + "\"\n"
            + text);
  }
}
