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
import witnessmark.cli.answer.InForce;
import witnessmark.cli.answer.PointText;
import witnessmark.desk.CheckWrench;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.entry.Moments;
import witnessmark.wrench.Wrench;

/** Enters a check on the shop's own tester. */
@Command(
    name = "check",
    mixinStandardHelpOptions = true,
    description = {
      "Enter the daily or weekly check of a wrench on the shop's own tester.",
      "Each point is what the wrench showed, a colon, and what the tester measured.",
      "Exit status 1 when it is beyond the permissible deviation: its calibration then ends."
    },
    footer = {
      "",
      "Example:  witnessmark wrench check TW-0417 --tester tester-1 --by badge-07 \\",
      "            --point \"60 N.m: 60.4 60.2 60.3\""
    })
final class WrenchCheckCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "SERIAL")
  private String serial;

  @Option(names = "--tester", required = true, description = "What it was checked on.")
  private String tester;

  @Option(names = "--point", required = true, description = "A point; repeatable.")
  private List<String> points;

  @Option(names = "--by", required = true, description = "Badge of the person.")
  private String by;

  @Mixin private DataOption data;

  @Override
  public Integer call() {
    long n =
        data.carryOut(
            Given.valid(
                spec,
                () ->
                    new CheckWrench(
                        serial, tester, points.stream().map(PointText::read).toList(), by)));
    Entry.WrenchChecked entry =
        data.reading(r -> (Entry.WrenchChecked) EntryJson.read(r.entry(n).orElseThrow().bytes()));
    PrintWriter out = spec.commandLine().getOut();
    entry.points().forEach(p -> out.println("Checked " + PointText.of(p)));
    out.println(
        entry.within()
            ? serial + " is within the permissible deviation (entry " + n + ")."
            : serial
                + " is out of tolerance and has no calibration in force from now on (entry "
                + n
                + "). Have it calibrated.");
    Wrench wrench = data.shop().wrenches().get(serial).newest();
    if (entry.within() && !wrench.calibratedAt(Moments.now())) {
      out.println(
          "It has no calibration in force all the same: "
              + data.reading(InForce::of).of(wrench, Moments.now())
              + ".");
    }
    data.reading(r -> CheckSeries.of(r, serial))
        .forEach(
            s ->
                CheckChart.warnings(s).forEach(w -> out.println("At " + s.indicated() + ": " + w)));
    out.flush();
    return entry.within() ? Exit.YES : Exit.NO;
  }
}
