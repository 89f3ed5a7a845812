package witnessmark.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Every test that the threat table rests on is there. */
class ThreatsDocTest {
  @Test
  void everyTestThatIsNamedExists() throws IOException {
    Set<String> named = new TreeSet<>();
    Matcher name =
        Pattern.compile("`([A-Z][A-Za-z]*(?:Test|IT))`")
            .matcher(Files.readString(Path.of("docs/threats.md")));
    while (name.find()) {
      named.add(name.group(1));
    }
    Set<String> there;
    try (Stream<Path> files = Files.walk(Path.of("src/test/java"))) {
      there =
          files
              .map(f -> f.getFileName().toString())
              .filter(f -> f.endsWith(".java"))
              .map(f -> f.substring(0, f.length() - ".java".length()))
              .collect(Collectors.toSet());
    }
    assertThat(named).hasSizeGreaterThan(30);
    assertThat(there).containsAll(named);
  }
}
