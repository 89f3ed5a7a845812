package witnessmark.cli;

import java.util.Arrays;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import witnessmark.desk.Dispose;
import witnessmark.entry.Disposition;

/** A person's decision on a nonconforming fastener. */
@Command(
    name = "dispose",
    mixinStandardHelpOptions = true,
    description = {
      "Decide what happens to a nonconforming fastener: rework (loosen it and tighten it anew),",
      "replace (fit a new one), use-as-is (accept it under a concession), or scrap."
    },
    footer = {
      "",
      "Example:  witnessmark dispose J-4 pivot/1 --as replace --by badge-07 --because \"new bolt\""
    })
final class DisposeCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(index = "0", paramLabel = "JOB")
  private String job;

  @Parameters(index = "1", paramLabel = "FASTENER")
  private String fastener;

  @Option(
      names = "--as",
      paramLabel = "DECISION",
      required = true,
      description = "rework, replace, use-as-is or scrap.")
  private String decision;

  @Option(names = "--by", paramLabel = "BADGE", required = true, description = "Who decides.")
  private String by;

  @Option(names = "--because", required = true, description = "Why; goes on record.")
  private String because;

  @Mixin private DataOption data;

  @Override
  public Integer call() {
    Disposition disposition =
        Arrays.stream(Disposition.values())
            .filter(d -> d.code().equals(decision))
            .findFirst()
            .orElseThrow(
                () ->
                    new ParameterException(
                        spec.commandLine(),
                        "unknown decision \""
                            + decision
                            + "\"; allowed are "
                            + Arrays.stream(Disposition.values())
                                .map(Disposition::code)
                                .collect(Collectors.joining(", "))));
    long n =
        data.carryOut(
            Given.valid(spec, () -> new Dispose(job, fastener, disposition, by, because)));
    spec.commandLine()
        .getOut()
        .println(fastener + ": " + decision + ", decided by " + by + " (entry " + n + ").");
    JobText.status(spec.commandLine().getOut(), data.shop().jobs().get(job));
    return Exit.YES;
  }
}
