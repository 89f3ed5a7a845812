package witnessmark.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The literal examples of docs/messages.md against the schemas. */
class MessageExamplesTest {
  private static List<String> examples() throws IOException {
    String document = Files.readString(Path.of("docs/messages.md"));
    Stream<String> blocks = found(document, "(?s)```json\n(.*?)```");
    Stream<String> inline = found(document, "`(\\{\"(?:scan|bridge)\":[^`]*\\})`");
    return Stream.concat(blocks, inline).toList();
  }

  private static Stream<String> found(String document, String pattern) {
    return Pattern.compile(pattern).matcher(document).results().map(r -> r.group(1));
  }

  @Test
  void everyExampleValidates() throws IOException {
    List<String> examples = examples();
    assertThat(examples)
        .extracting(MessageExamplesTest::schema)
        .containsExactly(
            "torque-event", "verdict", "scanned", "expect", "health", "scan", "health");
    for (String example : examples) {
      assertThat(Schemas.faults(schema(example), example)).as(example).isEmpty();
    }
  }

  private static String schema(String example) {
    for (String[] told :
        new String[][] {
          {"{\"wrench\"", "torque-event"},
          {"{\"specversion\"", example.contains("witnessmark.scan.v1") ? "scanned" : "verdict"},
          {"{\"station\"", "expect"},
          {"{\"bridge\"", "health"},
          {"{\"scan\"", "scan"},
        }) {
      if (example.startsWith(told[0])) {
        return told[1];
      }
    }
    throw new IllegalArgumentException(example);
  }
}
