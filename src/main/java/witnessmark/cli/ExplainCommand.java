package witnessmark.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import witnessmark.desk.Declined;
import witnessmark.entry.EntryJson;
import witnessmark.ledger.Stored;
import witnessmark.report.Explanation;

/** Tells why an entry says what it says. */
@Command(
    name = "explain",
    mixinStandardHelpOptions = true,
    description = "Tell why a torque event was matched and judged as it was.",
    footer = {"", "Example:  witnessmark explain 57"})
final class ExplainCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "ENTRY", description = "The entry's number.")
  private long n;

  @Mixin private DataOption data;

  @Override
  public Integer call() {
    Stored stored =
        data.reading(r -> r.entry(n))
            .orElseThrow(() -> new Declined("There is no entry " + n + "."));
    Explanation.of(n, EntryJson.read(stored.bytes())).forEach(spec.commandLine().getOut()::println);
    return Exit.YES;
  }
}
