package wrenchsim;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The simulator and the bridge meet on the wire only. */
class StandsAloneTest {
  @Test
  void noFileOfTheSimulatorKnowsTheBridge() throws IOException {
    assertThat(linesWith(Path.of("simulator"), "import witnessmark")).isEmpty();
    assertThat(linesWith(Path.of("simulator"), "import static witnessmark")).isEmpty();
    assertThat(linesWith(Path.of("simulator"), "package wrenchsim")).isNotEmpty();
  }

  @Test
  void noFileOfTheBridgeKnowsTheSimulator() throws IOException {
    assertThat(linesWith(Path.of("src/main/java"), "import wrenchsim")).isEmpty();
  }

  @Test
  void everyLibraryOfTheSimulatorLivesInOnePackage() throws IOException {
    assertThat(packagesWith("import org.eclipse.paho")).containsExactly("mqtt");
    assertThat(packagesWith("import com.fazecast")).containsExactly("line");
    assertThat(packagesWith("import com.fasterxml")).containsExactly("wire");
  }

  private static List<String> packagesWith(String text) throws IOException {
    return linesWith(Path.of("simulator"), text).stream()
        .map(file -> Path.of(file).getParent().getFileName().toString())
        .distinct()
        .toList();
  }

  private static List<String> linesWith(Path root, String text) throws IOException {
    try (Stream<Path> files = Files.walk(root)) {
      return files
          .filter(f -> f.toString().endsWith(".java"))
          .filter(f -> read(f).contains(text))
          .map(Path::toString)
          .toList();
    }
  }

  private static String read(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }
}
