package witnessmark.cli;

import java.util.Optional;
import picocli.CommandLine.Option;

/** The {@code --by} option: who does it. */
final class ByOption {
  @Option(names = "--by", paramLabel = "BADGE", description = "Who does this; an enrolled badge.")
  private String badge;

  Optional<String> badge() {
    return Optional.ofNullable(badge);
  }
}
