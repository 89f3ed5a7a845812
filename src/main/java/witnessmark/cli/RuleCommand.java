package witnessmark.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import witnessmark.desk.RuleCalibration;
import witnessmark.torque.Digits;
import witnessmark.torque.Torque;
import witnessmark.torque.WrenchKind;
import witnessmark.wrench.CalibrationRule;

/** How wrenches of a type are to be calibrated. */
@Command(
    name = "rule",
    mixinStandardHelpOptions = true,
    description = {
      "Show how wrenches of a type are to be calibrated, or change it.",
      "While the shop has made no rule, one from memory of ISO 6789 holds: the standard in",
      "hand and the wrench maker's instructions go before it."
    },
    footer = {
      "",
      "Example:  witnessmark wrench rule indicating",
      "          witnessmark wrench rule setting --readings 10 --months 6 --by badge-02"
    })
final class RuleCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "TYPE", description = "indicating or setting.")
  private String type;

  @Option(names = "--deviation", description = "Permissible, %% of the reference.")
  private String deviation;

  @Option(names = "--small-up-to", description = "Up to this torque another is, e.g. \"10 N.m\".")
  private String smallUpTo;

  @Option(names = "--small-deviation", description = "That deviation, %%.")
  private String smallDeviation;

  @Option(
      names = "--points",
      split = ",",
      description = "%% of the upper end of the range, beside its lower end, e.g. 60,100.")
  private List<String> points;

  @Option(names = "--readings", description = "At each point, at least.")
  private Integer readings;

  @Option(names = "--months", description = "Due after so many.")
  private Integer months;

  @Option(names = "--operations", description = "Due after so many.")
  private Long operations;

  @Mixin private ByOption by;
  @Mixin private SignOption sign;
  @Mixin private DataOption data;

  @Override
  public Integer call() {
    WrenchKind kind = Given.valid(spec, () -> WrenchKind.of(type));
    CalibrationRule before = data.shop().rule(kind);
    CalibrationRule rule = Given.valid(spec, () -> changed(before));
    PrintWriter out = spec.commandLine().getOut();
    if (rule.equals(before)) {
      out.println(text(kind, before));
      if (!data.shop().rules().containsKey(kind)) {
        out.println(
            "Not made by the shop: from memory of ISO 6789. Compare it with the standard in hand.");
      }
    } else {
      long n = data.carryOut(new RuleCalibration(kind, rule, by.badge()), sign);
      out.println(text(kind, rule) + " (Entry " + n + ".)");
    }
    out.flush();
    return Exit.YES;
  }

  private CalibrationRule changed(CalibrationRule rule) {
    return new CalibrationRule(
        deviation == null ? rule.deviation() : new Digits(deviation),
        smallUpTo == null ? rule.smallUpTo() : Optional.of(Torque.parse(smallUpTo)),
        smallDeviation == null ? rule.smallDeviation() : Optional.of(new Digits(smallDeviation)),
        points == null ? rule.points() : points.stream().map(Digits::new).toList(),
        readings == null ? rule.readings() : readings,
        months == null ? rule.months() : months,
        operations == null ? rule.operations() : operations);
  }

  private static String text(WrenchKind kind, CalibrationRule rule) {
    return "Wrenches of type "
        + kind.code()
        + ": "
        + rule.deviation()
        + " % permissible"
        + rule.smallUpTo()
            .map(t -> " (" + rule.smallDeviation().orElseThrow() + " % up to " + t + ")")
            .orElse("")
        + ", at the lower end of the range"
        + rule.points().stream().map(p -> ", " + p + " %").collect(Collectors.joining())
        + ", "
        + rule.readings()
        + " readings each; due after "
        + rule.months()
        + " months or "
        + rule.operations()
        + " operations.";
  }
}
