package witnessmark.cli;

import java.io.PrintWriter;
import picocli.CommandLine.Option;
import witnessmark.cli.answer.Json;

/** The {@code --json} option: the same answer for programs. */
final class JsonOption {
  @Option(names = "--json", description = "Print JSON instead of a table.")
  private boolean wanted;

  boolean wanted() {
    return wanted;
  }

  void print(PrintWriter out, Object value) {
    Json.write(out, value);
  }
}
