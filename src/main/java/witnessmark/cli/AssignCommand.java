package witnessmark.cli;

import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import witnessmark.cli.answer.JobText;
import witnessmark.desk.Assign;
import witnessmark.desk.Declined;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;

/** A person's hand match of an event. */
@Command(
    name = "assign",
    mixinStandardHelpOptions = true,
    description = {
      "Say which fastener a torque event belongs to that was credited to none,",
      "or set it aside as belonging to none of the job."
    },
    footer = {
      "",
      "Example:  witnessmark assign 57 --fastener hub/3 --by badge-07 --because \"seen done\""
    })
final class AssignCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "ENTRY", description = "The event's entry number.")
  private long n;

  @ArgGroup(multiplicity = "1")
  private Where where;

  @Option(names = "--job", description = "Needed where no job was open when the event came.")
  private String job;

  @Option(names = "--by", paramLabel = "BADGE", required = true, description = "Who says so.")
  private String by;

  @Option(names = "--because", required = true, description = "Why; goes on record.")
  private String because;

  @Mixin private DataOption data;

  /** One of the two. */
  static final class Where {
    @Option(names = "--fastener", required = true, description = "The fastener it belongs to.")
    private String fastener;

    @Option(names = "--set-aside", required = true, description = "It belongs to none.")
    private boolean aside;
  }

  @Override
  public Integer call() {
    Entry.TorqueTaken taken = taken();
    String target = Optional.ofNullable(job).or(taken::job).orElseThrow(this::jobNeeded);
    long made =
        data.carryOut(
            Given.valid(
                spec,
                () ->
                    new Assign(
                        n, taken, target, Optional.ofNullable(where.fastener), by, because)));
    String text =
        where.aside
            ? "Entry " + n + " set aside"
            : data.reading(
                r ->
                    ((Entry.Assigned) EntryJson.read(r.entry(made).orElseThrow().bytes()))
                        .judged()
                        .text());
    spec.commandLine().getOut().println(text + " (entry " + made + ")");
    JobText.status(spec.commandLine().getOut(), data.shop().jobs().get(target));
    return Exit.YES;
  }

  private ParameterException jobNeeded() {
    return new ParameterException(
        spec.commandLine(), "No job was open when entry " + n + " came: name one with --job.");
  }

  private Entry.TorqueTaken taken() {
    Entry entry =
        data.reading(r -> r.entry(n).map(s -> EntryJson.read(s.bytes())))
            .orElseThrow(() -> new Declined("There is no entry " + n + "."));
    if (entry instanceof Entry.TorqueTaken t) {
      return t;
    }
    throw new Declined("Entry " + n + " is no torque event; see: witnessmark explain " + n);
  }
}
