package witnessmark.cli;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import witnessmark.desk.BindWrench;
import witnessmark.entry.Source;

/** Says by which ways a wrench may report. */
@Command(
    name = "bind",
    mixinStandardHelpOptions = true,
    description = {
      "Say from which links a wrench may report, so that nothing else can speak in its name.",
      "A reading of it that comes another way is recorded and accepts no fastener.",
      "A link is called as in the configuration; of a broker perhaps one station only."
    },
    footer = {
      "",
      "Example:  witnessmark wrench bind TW-0417 --from bench-1-cable --by badge-11",
      "          witnessmark wrench bind TW-0502 --from shop-broker/bench-1 --by badge-11",
      "          witnessmark wrench bind TW-0502 --anywhere --by badge-11"
    })
final class BindCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "SERIAL")
  private String serial;

  @ArgGroup(multiplicity = "1")
  private Where where;

  @Option(names = "--by", paramLabel = "BADGE", required = true, description = "Who says so.")
  private String by;

  @Mixin private SignOption sign;
  @Mixin private DataOption data;

  /** One of the two. */
  static final class Where {
    @Option(
        names = "--from",
        paramLabel = "LINK[/STATION]",
        required = true,
        description = "A link that it may report from; repeatable.")
    private List<String> from = List.of();

    @Option(names = "--anywhere", required = true, description = "It may report from any link.")
    private boolean anywhere;
  }

  @Override
  public Integer call() {
    BindWrench command = Given.valid(spec, () -> new BindWrench(serial, sources(), by));
    long n = data.carryOut(command, sign);
    String from =
        command.sources().isEmpty()
            ? "anywhere"
            : command.sources().stream().map(Source::toString).collect(Collectors.joining(", "));
    spec.commandLine()
        .getOut()
        .println(serial + " may report from " + from + " from now on (entry " + n + ").");
    if (!command.sources().isEmpty()) {
      spec.commandLine()
          .getOut()
          .println(
              "From another link its readings count for nothing. Whether the links are those of the"
                  + " bridge is told by: witnessmark doctor --config FILE");
    }
    spec.commandLine().getOut().flush();
    return Exit.YES;
  }

  private List<Source> sources() {
    return where.anywhere ? List.of() : where.from.stream().map(BindCommand::source).toList();
  }

  private static Source source(String text) {
    String[] parts = text.split("/", 2);
    return new Source(parts[0], parts.length == 2 ? Optional.of(parts[1]) : Optional.empty());
  }
}
