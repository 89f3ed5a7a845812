package witnessmark.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import witnessmark.cli.answer.JobText;
import witnessmark.desk.Attest;

/** A person's confirmation. */
@Command(
    name = "attest",
    mixinStandardHelpOptions = true,
    description = "Confirm an attest step of a job, such as new washers or a safety wire.",
    footer = {"", "Example:  witnessmark attest J-4 wire --by badge-07"})
final class AttestCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(index = "0", paramLabel = "JOB")
  private String job;

  @Parameters(index = "1", paramLabel = "STEP")
  private String step;

  @Option(names = "--by", paramLabel = "BADGE", required = true, description = "Who confirms.")
  private String by;

  @Mixin private DataOption data;

  @Override
  public Integer call() {
    long n = data.carryOut(new Attest(job, step, by));
    spec.commandLine().getOut().println("Confirmed " + step + " by " + by + " (entry " + n + ").");
    JobText.status(spec.commandLine().getOut(), data.shop().jobs().get(job));
    return Exit.YES;
  }
}
