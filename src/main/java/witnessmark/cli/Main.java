package witnessmark.cli;

import java.util.Arrays;
import java.util.Optional;
import picocli.AutoComplete.GenerateCompletion;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The program's entry point. */
@Command(
    name = "witnessmark",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    description = {
      "Reads torque events from digital wrenches, matches each to the fastener that is due,",
      "judges it, and keeps a log that can be proved.",
      "",
      "Torque is not clamp load, and a record does not make a joint safe: the maker's service",
      "instructions, local codes and qualified persons decide.",
      ""
    },
    footer = {
      "",
      "Exit status: 0 yes, 1 no, 2 wrong command line, 3 wrong input file,",
      "4 surroundings failed (port, broker, disk, lock, key).",
      "",
      "Begin with:  witnessmark demo"
    },
    subcommands = {
      DemoCommand.class,
      RunCommand.class,
      SimulateCommand.class,
      ProcedureCommand.class,
      JobCommand.class,
      AttestCommand.class,
      MeasureCommand.class,
      DisposeCommand.class,
      NonconformitiesCommand.class,
      AssignCommand.class,
      WrenchCommand.class,
      OperatorCommand.class,
      TraceCommand.class,
      CapabilityCommand.class,
      ExplainCommand.class,
      RecallCommand.class,
      LedgerCommand.class,
      DoctorCommand.class,
      ProfileCommand.class,
      LicencesCommand.class,
      GenerateCompletion.class
    })
public final class Main implements Runnable {
  @Spec private CommandSpec spec;

  public static void main(String[] args) {
    Console console = new Console().everywhere();
    Optional<String> lost = Console.lost(args);
    lost.ifPresent(System.err::println);
    System.exit(lost.isPresent() ? Exit.SURROUNDINGS : console.status(execute(console, args)));
  }

  /** Runs a command line and returns its exit status. */
  static int execute(Console console, String... args) {
    // Building all the others takes a third of the daemon's start.
    boolean daemon = args.length > 0 && args[0].equals("run");
    CommandLine line =
        daemon
            ? answering(new CommandLine(new RunCommand()).setCommandName("witnessmark run"))
            : commands();
    return line.setOut(TerminalWriter.over(console.out()))
        .setErr(TerminalWriter.over(console.err()))
        .execute(daemon ? Arrays.copyOfRange(args, 1, args.length) : args);
  }

  /** All commands, ready to be typed to. */
  static CommandLine commands() {
    CommandLine line = new CommandLine(new Main());
    line.getSubcommands()
        .get("generate-completion")
        .getCommandSpec()
        .usageMessage()
        .hidden(true)
        .footer("", "Example:  source <(witnessmark generate-completion)");
    return answering(line);
  }

  private static CommandLine answering(CommandLine line) {
    line.setOut(TerminalWriter.to(System.out)).setErr(TerminalWriter.to(System.err));
    return HelpText.flowing(Typed.by(line))
        .setExecutionExceptionHandler(new Failures())
        .setParameterExceptionHandler(new Failures())
        .setUsageHelpWidth(100)
        .setUsageHelpAutoWidth(true)
        .setCaseInsensitiveEnumValuesAllowed(true)
        // colours are made of what the writers do not let through
        .setColorScheme(CommandLine.Help.defaultColorScheme(CommandLine.Help.Ansi.OFF));
  }

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "Name a command.");
  }
}
