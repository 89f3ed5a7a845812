package witnessmark.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import witnessmark.procedure.Doubt;
import witnessmark.sight.Mistake;

/** docs/procedure-format.md lists what a check finds and what it announces. */
class FindingsDocTest {
  private static List<String> rows(String heading) throws IOException {
    String document = Files.readString(Path.of("docs/procedure-format.md"));
    int from = document.indexOf("\n" + heading + "\n");
    assertThat(from).as(heading).isPositive();
    String section = document.substring(from + heading.length() + 2).split("\n## ")[0];
    return section.lines().filter(l -> l.startsWith("| `")).toList();
  }

  @Test
  void everyFindingIsExplained() throws IOException {
    assertThat(rows("## Findings").stream().map(r -> r.split("`")[1]))
        .containsExactlyElementsOf(Arrays.stream(Doubt.values()).map(Doubt::code).toList());
  }

  @Test
  void everyMistakeIsListedInTheWordsOfTheCheck() throws IOException {
    assertThat(rows("## What readings show"))
        .containsExactlyElementsOf(
            Arrays.stream(Mistake.values())
                .map(m -> "| `" + m.code() + "` | " + m.words() + " |")
                .toList());
  }
}
