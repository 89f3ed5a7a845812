package witnessmark.cli;

import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import witnessmark.cli.answer.JobText;
import witnessmark.desk.Measure;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.torque.Digits;

/** A person's numbers. */
@Command(
    name = "measure",
    mixinStandardHelpOptions = true,
    description = {
      "Enter the numbers of a measure step, in the order of its labels.",
      "Numbers outside the limits go on record, too; exit status 1 then."
    },
    footer = {"", "Example:  witnessmark measure J-4 gap 1.5 1.6 --by badge-07"})
final class MeasureCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(index = "0", paramLabel = "JOB")
  private String job;

  @Parameters(index = "1", paramLabel = "STEP")
  private String step;

  @Parameters(index = "2..*", arity = "1..*", paramLabel = "NUMBER")
  private List<String> numbers;

  @Option(names = "--by", paramLabel = "BADGE", required = true, description = "Who measured.")
  private String by;

  @Mixin private DataOption data;

  @Override
  public Integer call() {
    List<Digits> values = Given.valid(spec, () -> numbers.stream().map(Digits::new).toList());
    long n = data.carryOut(new Measure(job, step, values, by));
    Entry entry = data.reading(r -> EntryJson.read(r.entry(n).orElseThrow().bytes()));
    Entry.Measured measured = (Entry.Measured) entry;
    spec.commandLine().getOut().println(measured.text() + " (entry " + n + ")");
    JobText.status(spec.commandLine().getOut(), data.shop().jobs().get(job));
    return measured.within() ? Exit.YES : Exit.NO;
  }
}
