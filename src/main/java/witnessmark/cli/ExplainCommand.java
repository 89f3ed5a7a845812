package witnessmark.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import witnessmark.desk.Declined;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.ledger.Reading;
import witnessmark.pipeline.Before;
import witnessmark.report.Explanation;
import witnessmark.torque.Visible;

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
    data.reading(this::lines).stream()
        .map(Visible::of)
        .forEach(spec.commandLine().getOut()::println);
    return Exit.YES;
  }

  private List<String> lines(Reading reading) {
    Entry entry =
        reading
            .entry(n)
            .map(s -> EntryJson.read(s.bytes()))
            .orElseThrow(() -> new Declined("There is no entry " + n + "."));
    List<String> lines = new ArrayList<>(Explanation.of(n, entry));
    Before.of(reading, n, entry)
        .ifPresent(b -> lines.addAll(Explanation.why(entry, b.job(), b.event(), b.today())));
    return lines;
  }
}
