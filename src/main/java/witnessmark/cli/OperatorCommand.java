package witnessmark.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import witnessmark.desk.EnrolOperator;
import witnessmark.report.Table;

/** The register of operators. */
@Command(
    name = "operator",
    mixinStandardHelpOptions = true,
    description = "Enrol operators by their badges and list them.",
    footer = {"", "Example:  witnessmark operator list"})
final class OperatorCommand {
  @Spec private CommandSpec spec;

  @Command(
      name = "enrol",
      mixinStandardHelpOptions = true,
      description = "Make a badge known.",
      footer = {
        "",
        "Example:  witnessmark operator enrol badge-07 --name \"bench 1, early shift\""
      })
  int enrol(
      @Parameters(paramLabel = "BADGE") String badge,
      @Option(names = "--name", description = "As shown on records (default: the badge).")
          String name,
      @Mixin ByOption by,
      @Mixin DataOption data) {
    EnrolOperator command =
        Given.valid(spec, () -> new EnrolOperator(badge, name == null ? badge : name, by.badge()));
    long n = data.carryOut(command);
    spec.commandLine().getOut().println("Enrolled " + badge + " (entry " + n + ").");
    return Exit.YES;
  }

  @Command(
      name = "list",
      mixinStandardHelpOptions = true,
      description = "List the enrolled operators.",
      footer = {"", "Example:  witnessmark operator list --json"})
  int list(@Mixin DataOption data, @Mixin JsonOption json) {
    var operators = data.shop().operators().values();
    if (json.wanted()) {
      json.print(
          spec.commandLine().getOut(),
          operators.stream()
              .map(o -> JsonOption.object("badge", o.badge(), "name", o.name()))
              .toList());
      return Exit.YES;
    }
    Table table = new Table("BADGE", "NAME");
    operators.forEach(o -> table.add(o.badge(), o.name()));
    spec.commandLine()
        .getOut()
        .println(
            table.isEmpty()
                ? "No operator is enrolled yet. Enrol one: witnessmark operator enrol BADGE"
                : table.toString().stripTrailing());
    return Exit.YES;
  }
}
