package witnessmark.cli;

import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import witnessmark.cli.answer.JobText;
import witnessmark.desk.Dispose;
import witnessmark.entry.Disposition;

/** A person's decision on a nonconforming fastener. */
@Command(
    name = "dispose",
    mixinStandardHelpOptions = true,
    description = {
      "Decide what happens to a nonconforming fastener: rework (loosen it and tighten it anew),",
      "replace (fit a new one), use-as-is (accept it under a concession), or scrap.",
      "Who may decide that depends on criticality and role: docs/entries.md, Who may decide."
    },
    footer = {
      "",
      "Example:  witnessmark dispose J-4 pivot/1 --as replace --by badge-11 --because \"new bolt\""
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

  @Option(
      names = "--concession",
      paramLabel = "NUMBER",
      description =
          "Number of the concession it is used under; asked for where criticality is danger.")
  private String concession;

  @Mixin private SignOption sign;
  @Mixin private DataOption data;

  @Override
  public Integer call() {
    long n =
        data.carryOut(
            Given.valid(
                spec,
                () ->
                    new Dispose(
                        job,
                        fastener,
                        Words.read(Disposition.class, "decision", decision),
                        by,
                        Optional.ofNullable(concession),
                        because)),
            sign);
    spec.commandLine()
        .getOut()
        .println(fastener + ": " + decision + ", decided by " + by + " (entry " + n + ").");
    JobText.status(spec.commandLine().getOut(), data.shop().jobs().get(job));
    return Exit.YES;
  }
}
