package witnessmark.cli;

import java.util.Collection;
import java.util.function.Supplier;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import witnessmark.toml.Nearest;

/** Values given on the command line. */
final class Given {
  private Given() {}

  /** Builds something from the given values; a value it refuses means that the line is wrong. */
  static <T> T valid(CommandSpec spec, Supplier<T> build) {
    try {
      return build.get();
    } catch (IllegalArgumentException e) {
      throw new ParameterException(typed(spec), e.getMessage(), e);
    }
  }

  /**
   * The word, which must be one of those allowed.
   *
   * @throws IllegalArgumentException that names the nearest and all of them when it is not
   */
  static String oneOf(String what, String word, Collection<String> allowed) {
    if (allowed.contains(word)) {
      return word;
    }
    throw new IllegalArgumentException(
        "unknown "
            + what
            + " \""
            + word
            + "\"; "
            + Nearest.of(word, allowed)
                .map(n -> "did you mean \"" + n + "\"? Allowed")
                .orElse("allowed")
            + " are "
            + String.join(", ", allowed));
  }

  /** The command that was typed, where the spec is that of the group it belongs to. */
  private static CommandLine typed(CommandSpec spec) {
    ParseResult result = spec.commandLine().getParseResult();
    return result != null && result.hasSubcommand()
        ? result.subcommand().commandSpec().commandLine()
        : spec.commandLine();
  }
}
