package witnessmark.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Inputs that a parser once did not stand, or that were made to be such. */
class FoundInputsTest {
  private static final Path FOUND = Path.of("src/test/resources/witnessmark/fuzz/found.txt");

  @Test
  void whatWasFoundOnceIsStood() throws IOException {
    Map<String, Target<?>> targets =
        Fuzz.targets().stream().collect(Collectors.toMap(Target::name, Function.identity()));
    List<String> lines =
        Files.readAllLines(FOUND).stream().filter(line -> !line.startsWith("#")).toList();
    assertThat(lines).hasSizeGreaterThan(10);
    for (String line : lines) {
      int colon = line.indexOf(": ");
      Target<?> target = targets.get(line.substring(0, colon));
      assertThat(target).as(line).isNotNull();
      byte[] input = HexFormat.of().parseHex(line.substring(colon + 2));
      assertThat(Fault.of(target, input)).as(line).isNull();
    }
  }
}
