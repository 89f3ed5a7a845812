package witnessmark.cli;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import witnessmark.cli.answer.Json;
import witnessmark.desk.EnrolOperator;
import witnessmark.entry.Role;
import witnessmark.job.Operator;
import witnessmark.job.OperatorKey;
import witnessmark.report.Table;

/** The register of operators. */
@Command(
    name = "operator",
    mixinStandardHelpOptions = true,
    description = "Enrol operators by their badges, with their keys, and list them.",
    subcommands = OperatorKeyCommand.class,
    footer = {"", "Example:  witnessmark operator list"})
final class OperatorCommand {
  @Spec private CommandSpec spec;

  @Command(
      name = "enrol",
      mixinStandardHelpOptions = true,
      description = {
        "Make a badge known, or change its name or roles.",
        "Roles say who may decide on a nonconforming fastener: docs/entries.md, Who may decide."
      },
      footer = {
        "",
        "Example:  witnessmark operator enrol badge-07 --name \"bench 1, early shift\"",
        "          witnessmark operator enrol badge-11 --role quality"
      })
  int enrol(
      @Parameters(paramLabel = "BADGE") String badge,
      @Option(
              names = "--name",
              description = "As shown on records (default: as on record, or the badge).")
          String name,
      @Option(
              names = "--role",
              paramLabel = "ROLE",
              description =
                  "technician, second or quality; may be given several times"
                      + " (default: as on record, or technician).")
          List<String> roles,
      @Mixin ByOption by,
      @Mixin SignOption sign,
      @Mixin DataOption data) {
    EnrolOperator command =
        Given.valid(
            spec,
            () -> new EnrolOperator(badge, Optional.ofNullable(name), roles(roles), by.badge()));
    long n = data.carryOut(command, sign);
    String enrolled = roles(data.shop().operators().get(badge));
    spec.commandLine()
        .getOut()
        .println("Enrolled " + badge + " as " + enrolled + " (entry " + n + ").");
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
              .map(
                  o ->
                      Json.object(
                          "badge", o.badge(),
                          "name", o.name(),
                          "roles", o.roles().stream().map(Role::code).toList(),
                          "key", o.key().map(OperatorKey::publicKey).orElse(null)))
              .toList());
      return Exit.YES;
    }
    Table table = new Table("BADGE", "ROLES", "KEY", "NAME");
    operators.forEach(o -> table.add(o.badge(), roles(o), key(o), o.name()));
    spec.commandLine()
        .getOut()
        .println(
            table.isEmpty()
                ? "No operator is enrolled yet. Enrol one: witnessmark operator enrol BADGE"
                : table.toString().stripTrailing());
    return Exit.YES;
  }

  private static String key(Operator operator) {
    return operator.key().map(k -> "entry " + k.entry()).orElse("-");
  }

  private static List<Role> roles(List<String> words) {
    return words == null
        ? List.of()
        : words.stream().map(w -> Words.read(Role.class, "role", w)).toList();
  }

  private static String roles(Operator operator) {
    return operator.roles().stream().map(Role::code).collect(Collectors.joining(", "));
  }
}
