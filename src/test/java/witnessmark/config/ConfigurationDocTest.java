package witnessmark.config;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import witnessmark.link.serial.PortName;

/** docs/configuration.md against the reader it describes. */
class ConfigurationDocTest {
  private static final Pattern BLOCK = Pattern.compile("```toml\n(.*?)```", Pattern.DOTALL);

  @TempDir private Path temp;
  private ConfigDirectory directory;
  private String document;

  @BeforeEach
  void everythingThatIsNamedExists() throws IOException {
    directory = new ConfigDirectory(temp);
    document =
        Files.readString(Path.of("docs/configuration.md"))
            .replace("drop = \"/srv/checkpoints\"", "drop = \"checkpoints\"");
  }

  private List<String> examples() {
    List<String> found = new ArrayList<>();
    Matcher matcher = BLOCK.matcher(document);
    while (matcher.find()) {
      found.add(matcher.group(1));
    }
    return found;
  }

  @Test
  void theWholeExampleIsAConfiguration() throws IOException {
    BridgeConfig config = directory.read(examples().get(0));
    assertThat(config.name()).isEqualTo("shop-1");
    assertThat(config.data()).contains("/var/lib/witnessmark");
    assertThat(config.brokers()).hasSize(1);
    assertThat(config.brokers().get(0).settings().password()).contains("from-file");
    assertThat(config.brokers().get(0).mapped()).hasSize(1);
    assertThat(config.ports()).hasSize(1);
    assertThat(config.checkpoints().publishEvery()).isEqualTo(Duration.ofSeconds(60));
    assertThat(config.checkpoints().drop()).contains(temp.resolve("checkpoints"));
    assertThat(config.checkpoints().every()).isEqualTo(Duration.ofHours(24));
  }

  @Test
  void allExamplesTogetherAreAConfiguration() throws IOException {
    List<String> examples = examples();
    String fresh =
        examples
            .get(0)
            .replace("name = \"shop\"", "name = \"first\"")
            .replace("bench-3-cable", "first-cable");
    BridgeConfig config =
        directory.read(fresh + String.join("\n", examples.subList(1, examples.size())));
    assertThat(config.brokers())
        .extracting(b -> b.settings().name())
        .containsExactly("first", "shop", "office", "hall-2");
    assertThat(config.brokers().get(1).settings().password()).contains("from-env");
    assertThat(config.brokers().get(2).settings().keyFile()).isPresent();
    assertThat(config.ports())
        .extracting(p -> p.settings().port())
        .containsExactly(
            PortName.parse("/dev/ttyUSB0"),
            PortName.parse("usb-serial:A600XYZ"),
            PortName.parse("usb:0403:6001"),
            PortName.parse("/dev/serial/by-id/wrench-cradle"));
  }

  @ParameterizedTest
  @CsvSource({
    "[bridge],## `[bridge]`,bridge",
    "[checkpoints],## `[checkpoints]`,checkpoints",
    "[[mqtt]],## `[[mqtt]]`,mqtt",
    "[[mqtt]]\\n[[mqtt.map]],### `[[mqtt.map]]`,map",
    "[[serial]],## `[[serial]]`,serial",
    "[http],## `[http]`,http",
  })
  void everyKeyIsDescribedAndNoOther(String header, String heading, String section) {
    // The reader lists the keys it knows when one is far from all of them.
    String toml = header.replace("\\n", "\n") + "\nzzzzzzzzzzzzzzzzzzzz = 1\n";
    String fault =
        catchThrowable(() -> directory.read(toml))
            .getMessage()
            .lines()
            .filter(l -> l.contains("zzzz"))
            .findFirst()
            .orElseThrow();
    String known = fault.substring(fault.indexOf("allowed are ") + "allowed are ".length());
    assertThat(described(heading)).as(section).containsExactlyInAnyOrder(known.split(", "));
  }

  /** The first cells of the table under the heading. */
  private List<String> described(String heading) {
    int from = document.indexOf("\n" + heading);
    assertThat(from).as(heading).isPositive();
    int end = document.indexOf("\n#", from + 1);
    List<String> keys = new ArrayList<>();
    document
        .substring(from, end)
        .lines()
        .filter(l -> l.startsWith("| `"))
        .forEach(
            l -> {
              Matcher cell = Pattern.compile("`([^`]+)`").matcher(l.split("\\|")[1]);
              while (cell.find()) {
                keys.add(cell.group(1));
              }
            });
    return keys;
  }
}
