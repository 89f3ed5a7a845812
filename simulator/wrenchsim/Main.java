package wrenchsim;

import java.io.IOException;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The simulator's entry point. */
@Command(
    name = "wrenchsim",
    description = "Simulates torque wrenches, the joints they turn, and the person who holds them.",
    subcommands = {ShopCommand.class, BurstCommand.class, LineCommand.class},
    mixinStandardHelpOptions = true,
    version = "wrenchsim 1",
    exitCodeListHeading = "Exit status:%n",
    exitCodeList = {
      " 0:done",
      " 1:stopped unfinished: nothing was heard for too long, or frames stayed unanswered",
      " 2:wrong arguments",
      " 4:the broker, the serial line or the truth file failed"
    })
public final class Main implements Runnable {
  /** What the person typed to get here, where another program starts this one. */
  private static final String NAME = System.getProperty("wrenchsim.name", "wrenchsim");

  static final int UNFINISHED = 1;
  static final int FAILED = 4;

  @Spec private CommandSpec spec;

  /** Runs one command and ends the process with its exit status. */
  public static void main(String[] args) {
    System.exit(run(args));
  }

  /** Runs one command and gives its exit status. */
  static int run(String... args) {
    return new CommandLine(new Main())
        .setCommandName(NAME)
        .setCaseInsensitiveEnumValuesAllowed(true)
        .setUsageHelpWidth(100)
        .setUsageHelpAutoWidth(false)
        .setExecutionExceptionHandler(Main::failed)
        .setParameterExceptionHandler(Main::refused)
        .execute(args);
  }

  private static int refused(ParameterException e, String[] args) {
    CommandLine command = e.getCommandLine();
    warn(e.getMessage());
    warn("for help: " + command.getCommandSpec().qualifiedName() + " --help");
    return command.getCommandSpec().exitCodeOnInvalidInput();
  }

  private static int failed(Exception e, CommandLine command, CommandLine.ParseResult result)
      throws Exception {
    if (e instanceof IOException) {
      warn(e.getMessage());
      return FAILED;
    }
    throw e;
  }

  /** Says something on standard error, for standard output belongs to the happenings. */
  static void warn(String message) {
    System.err.println(NAME + ": " + message);
  }

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "name a command: shop, burst or line");
  }
}
