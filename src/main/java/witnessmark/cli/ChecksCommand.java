package witnessmark.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import witnessmark.cli.answer.CheckChart;
import witnessmark.cli.answer.CheckSeries;
import witnessmark.cli.answer.CheckSeries.Check;
import witnessmark.cli.answer.Json;
import witnessmark.entry.Moments;

/** The checks of a wrench, as an individuals chart. */
@Command(
    name = "checks",
    mixinStandardHelpOptions = true,
    description = {
      "Show a wrench's checks since its newest calibration, as an individuals chart for each",
      "torque, and whether it drifts towards its permissible deviation.",
      "Exit status 1 when the chart warns."
    },
    footer = {"", "Example:  witnessmark wrench checks TW-0417"})
final class ChecksCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "SERIAL")
  private String serial;

  @Option(names = "--json", description = "Print the deviations as JSON.")
  private boolean json;

  @Mixin private DataOption data;

  @Override
  public Integer call() {
    Registered.wrench(spec, data, serial);
    List<CheckSeries> all = data.reading(r -> CheckSeries.of(r, serial));
    PrintWriter out = spec.commandLine().getOut();
    if (json) {
      new JsonOption().print(out, all.stream().map(ChecksCommand::object).toList());
    } else if (all.isEmpty()) {
      out.println(
          "No check of "
              + serial
              + " is on record since its newest calibration. Enter one: wrench check "
              + serial
              + " --help");
    } else {
      all.forEach(s -> CheckChart.lines(s).forEach(out::println));
    }
    out.flush();
    return all.stream().allMatch(s -> CheckChart.warnings(s).isEmpty()) ? Exit.YES : Exit.NO;
  }

  private static Object object(CheckSeries series) {
    return Json.object(
        "indicated", series.indicated(),
        "permissible", series.permissible(),
        "warnings", CheckChart.warnings(series),
        "checks", series.checks().stream().map(ChecksCommand::object).toList());
  }

  private static Object object(Check check) {
    return Json.object(
        "entry", check.n(), "at", Moments.text(check.at()), "deviation", check.deviation());
  }
}
