package witnessmark.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import witnessmark.desk.Declined;
import witnessmark.desk.Release;
import witnessmark.job.Released;
import witnessmark.job.Shop;
import witnessmark.procedure.Finding;
import witnessmark.procedure.Procedure;
import witnessmark.procedure.ProcedureFile;
import witnessmark.procedure.Sanity;
import witnessmark.report.Table;

/** Checks, releases and shows procedures. */
@Command(
    name = "procedure",
    description = "Check, release, list and show procedures.",
    subcommands = CheckCommand.class,
    mixinStandardHelpOptions = true,
    footer = {"", "Example:  witnessmark procedure check demo-data/RAM-210.toml"})
final class ProcedureCommand {
  @Spec private CommandSpec spec;

  @Command(
      name = "release",
      mixinStandardHelpOptions = true,
      description = {
        "Write a procedure into the log under its revision.",
        "A released revision never changes."
      },
      footer = {"", "Example:  witnessmark procedure release demo-data/RAM-210.toml --by badge-07"})
  int release(
      @Parameters(paramLabel = "FILE") Path file, @Mixin DataOption data, @Mixin ByOption by) {
    String text = Files.text(file);
    Procedure procedure = ProcedureFile.parse(file.toString(), text);
    findings(procedure);
    long n = data.carryOut(new Release(procedure, text, by.badge()));
    out("Released " + procedure.id() + " revision " + procedure.revision() + " (entry " + n + ").");
    return Exit.YES;
  }

  @Command(
      name = "list",
      mixinStandardHelpOptions = true,
      description = "List the released procedures.",
      footer = {"", "Example:  witnessmark procedure list"})
  int list(@Mixin DataOption data, @Mixin JsonOption json) {
    List<Released> released = data.shop().procedures();
    if (json.wanted()) {
      json.print(
          spec.commandLine().getOut(),
          released.stream()
              .map(
                  r ->
                      JsonOption.object(
                          "procedure", r.procedure(), "revision", r.revision(), "entry", r.entry()))
              .toList());
      return Exit.YES;
    }
    Table table = new Table("PROCEDURE", "REVISION", "ENTRY", "TITLE");
    released.forEach(
        r -> table.add(r.procedure(), r.revision(), Long.toString(r.entry()), r.parse().title()));
    out(
        table.isEmpty()
            ? "No procedure is released yet. Release one: witnessmark procedure release FILE"
            : table.toString().stripTrailing());
    return Exit.YES;
  }

  @Command(
      name = "show",
      mixinStandardHelpOptions = true,
      description = "Print a released procedure's text, unchanged.",
      footer = {"", "Example:  witnessmark procedure show RAM-210 --revision C"})
  int show(
      @Parameters(paramLabel = "PROCEDURE") String procedure,
      @Option(names = "--revision", description = "Default: the one released last.")
          String revision,
      @Mixin DataOption data) {
    Shop shop = data.shop();
    Optional<Released> found =
        revision == null ? shop.newest(procedure) : shop.released(procedure, revision);
    Released released =
        found.orElseThrow(
            () ->
                new Declined(
                    "No released procedure "
                        + procedure
                        + (revision == null ? "" : " revision " + revision)
                        + "; see: witnessmark procedure list"));
    spec.commandLine().getOut().print(released.text());
    spec.commandLine().getOut().flush();
    return Exit.YES;
  }

  private void findings(Procedure procedure) {
    List<Finding> findings = Sanity.findings(procedure);
    findings.forEach(f -> out("doubtful: " + f));
  }

  private void out(String line) {
    spec.commandLine().getOut().println(line);
    spec.commandLine().getOut().flush();
  }
}
