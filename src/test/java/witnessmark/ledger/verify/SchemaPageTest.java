package witnessmark.ledger.verify;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The page of the format and the checker name the same objects, word for word. */
class SchemaPageTest {
  @Test
  void thePagePublishesWhatVerifyExpects() throws Exception {
    String page = Files.readString(Path.of("docs/ledger-format.md"));
    String block = page.split("```sql\n")[1].split("```")[0];
    List<String> statements = block.lines().map(l -> l.replaceFirst(";$", "")).toList();
    assertThat(statements).isEqualTo(Schema.STATEMENTS);
  }

  @Test
  void thePageNamesTheIndexesOfEarlierVersions() throws Exception {
    String page = Files.readString(Path.of("docs/ledger-format.md"));
    assertThat(Schema.EARLIER.values())
        .allSatisfy(forms -> assertThat(forms).allMatch(f -> page.contains("`" + f + "`")));
  }
}
