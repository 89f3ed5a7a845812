package witnessmark.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** docs/sources.md names tests that exist, and no test with a doubtful value stays unnamed. */
class SourcesDocTest {
  private static Set<String> named() throws IOException {
    return Pattern.compile("`(\\w+Test)`")
        .matcher(Files.readString(Path.of("docs/sources.md")))
        .results()
        .map(r -> r.group(1))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static Set<String> tests(Predicate<String> text) throws IOException {
    try (Stream<Path> files = Files.walk(Path.of("src/test/java"))) {
      return files
          .filter(f -> f.getFileName().toString().endsWith("Test.java"))
          .filter(f -> text.test(read(f)))
          .map(f -> f.getFileName().toString().replace(".java", ""))
          .collect(Collectors.toCollection(TreeSet::new));
    }
  }

  private static String read(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Test
  void everyTestThatIsNamedExists() throws IOException {
    assertThat(tests(t -> true)).containsAll(named());
  }

  @Test
  void everyTestWithAValueFromMemoryOrWithoutSourceIsNamed() throws IOException {
    Pattern doubtful = Pattern.compile("(from\\W+memory|no\\W+source)\\b");
    Set<String> tests = tests(t -> doubtful.matcher(t.replaceAll("\\s*\\*?\\s+", " ")).find());
    tests.remove("SourcesDocTest");
    assertThat(tests).isNotEmpty();
    assertThat(named()).containsAll(tests);
  }
}
