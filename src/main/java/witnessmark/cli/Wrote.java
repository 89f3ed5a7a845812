package witnessmark.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import picocli.CommandLine.Model.CommandSpec;

/** Says that a file was written beside the answer. */
final class Wrote {
  private Wrote() {}

  /**
   * Says so on standard output, or on standard error where a program reads that.
   *
   * @param file null is none
   */
  static void say(CommandSpec spec, Path file, boolean read) {
    if (file != null) {
      PrintWriter out = read ? spec.commandLine().getErr() : spec.commandLine().getOut();
      out.println("Wrote " + file + ".");
      out.flush();
    }
  }
}
