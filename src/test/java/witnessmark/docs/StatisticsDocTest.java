package witnessmark.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import witnessmark.sample.Omission;
import witnessmark.stats.Capability;
import witnessmark.stats.RunRule;

/** docs/statistics.md says what the program does. */
class StatisticsDocTest {
  private static String page() throws IOException {
    return Files.readString(Path.of("docs/statistics.md")).replace("σ", " sigma");
  }

  @Test
  void everyReasonToLeaveOutIsListed() throws IOException {
    List<String> rows =
        Pattern.compile("(?m)^\\| `([a-z-]+)` \\|")
            .matcher(page())
            .results()
            .map(r -> r.group(1))
            .toList();
    assertThat(rows).isEqualTo(Arrays.stream(Omission.values()).map(Omission::code).toList());
  }

  @Test
  void theRulesAreThoseOfTheProgram() throws IOException {
    for (RunRule rule : RunRule.values()) {
      assertThat(page()).contains(rule.number() + ". " + rule.text());
    }
  }

  @Test
  void theLimitsAreThoseOfTheProgram() throws IOException {
    assertThat(page())
        .contains("**Fewer than " + Capability.LEAST + " values.**")
        .contains("about " + Capability.ENOUGH + " independent values")
        .contains("Below " + Capability.STUDY + " a caution");
  }
}
