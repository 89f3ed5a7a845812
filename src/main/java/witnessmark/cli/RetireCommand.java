package witnessmark.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import witnessmark.desk.RetireWrench;

/** Takes a wrench out of use. */
@Command(
    name = "retire",
    mixinStandardHelpOptions = true,
    description = {
      "Take a wrench out of use, as after a drop or an overload.",
      "Its readings accept no fastener until it is calibrated or enrolled anew."
    },
    footer = {
      "",
      "Example:  witnessmark wrench retire TW-0417 --by badge-02 --because \"fell from the bench\""
    })
final class RetireCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "SERIAL")
  private String serial;

  @Option(names = "--by", required = true, description = "Badge of the person.")
  private String by;

  @Option(names = "--because", required = true, description = "Why, in a sentence.")
  private String because;

  @Mixin private SignOption sign;
  @Mixin private DataOption data;

  @Override
  public Integer call() {
    long n = data.carryOut(Given.valid(spec, () -> new RetireWrench(serial, by, because)), sign);
    spec.commandLine()
        .getOut()
        .println(
            "Retired "
                + serial
                + ": its readings accept no fastener until it is calibrated anew (entry "
                + n
                + ").");
    spec.commandLine().getOut().flush();
    return Exit.YES;
  }
}
