package witnessmark.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** The libraries inside, as the build listed them. */
@Command(
    name = "licences",
    mixinStandardHelpOptions = true,
    description = {
      "Tell which libraries are inside, under which licences, and where their source is.",
      "Their notices and licence texts are in the jar, below META-INF/third-party."
    },
    footer = {"", "Example:  witnessmark licences"})
final class LicencesCommand implements Callable<Integer> {
  private static final String LIST = "/META-INF/third-party/THIRD-PARTY.txt";

  @Spec private CommandSpec spec;

  @Override
  public Integer call() {
    try (InputStream list = LicencesCommand.class.getResourceAsStream(LIST)) {
      if (list == null) {
        throw new Refusal(
            Exit.SURROUNDINGS, "This program was not built with its list of licences.");
      }
      spec.commandLine().getOut().print(new String(list.readAllBytes(), StandardCharsets.UTF_8));
      spec.commandLine().getOut().flush();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return Exit.YES;
  }
}
