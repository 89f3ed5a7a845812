package witnessmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;

/** What {@code --help} says, of every command there is. */
class UsageTest {
  /** A command, shown by its whole name. */
  private record Named(CommandLine line) {
    String usage() {
      return line.getUsageMessage(CommandLine.Help.Ansi.OFF);
    }

    @Override
    public String toString() {
      return line.getCommandSpec().qualifiedName();
    }
  }

  static Stream<Named> commands() {
    return below(Main.commands());
  }

  private static Stream<Named> below(CommandLine line) {
    return line.getSubcommands().values().stream()
        .flatMap(c -> Stream.concat(Stream.of(new Named(c)), below(c)));
  }

  @Test
  void theWalkReachesGroupsAndWhatIsInThem() {
    assertThat(commands().map(Named::toString))
        .contains("witnessmark wrench", "witnessmark wrench enrol", "witnessmark simulate")
        .hasSizeGreaterThan(30);
  }

  @ParameterizedTest
  @MethodSource("commands")
  void everyOptionNamesWhatItTakes(Named command) {
    assertThat(command.usage()).doesNotContain("<arg");
  }

  @ParameterizedTest
  @MethodSource("commands")
  void everyCommandHasAnExampleOfItself(Named command) {
    String usage = command.usage().replaceAll("\\s+", " ");
    int example = usage.lastIndexOf(" Example: ");
    assertThat(example).as(usage).isPositive();
    assertThat(usage.substring(example)).contains(command + "");
  }
}
