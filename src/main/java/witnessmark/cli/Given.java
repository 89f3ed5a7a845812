package witnessmark.cli;

import java.util.function.Supplier;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;

/** Values given on the command line. */
final class Given {
  private Given() {}

  /** Builds something from the given values; a value it refuses means that the line is wrong. */
  static <T> T valid(CommandSpec spec, Supplier<T> build) {
    try {
      return build.get();
    } catch (IllegalArgumentException e) {
      throw new ParameterException(spec.commandLine(), e.getMessage(), e);
    }
  }
}
