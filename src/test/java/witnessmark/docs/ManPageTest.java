package witnessmark.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import witnessmark.cli.Commands;

/** The manual page names the commands that there are. */
class ManPageTest {
  @Test
  void everyCommandStandsInIt() throws Exception {
    String page = Files.readString(Path.of("src/main/debian/witnessmark.1"));
    List<String> entries =
        Pattern.compile("^\\.TP\\n\\.B ([a-z]+)$", Pattern.MULTILINE)
            .matcher(page)
            .results()
            .map(m -> m.group(1))
            .collect(Collectors.toList());
    Set<String> names = new TreeSet<>(Commands.names());
    assertThat(entries).containsExactlyInAnyOrderElementsOf(names);
  }
}
