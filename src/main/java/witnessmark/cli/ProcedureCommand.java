package witnessmark.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import witnessmark.cli.answer.Json;
import witnessmark.desk.Declined;
import witnessmark.desk.Release;
import witnessmark.entry.Acknowledged;
import witnessmark.job.Released;
import witnessmark.job.Shop;
import witnessmark.procedure.Procedure;
import witnessmark.procedure.ProcedureFile;
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
        "A released revision never changes. Findings of the check never stop a release; which of",
        "them were looked at is recorded."
      },
      footer = {"", "Example:  witnessmark procedure release demo-data/RAM-210.toml --by badge-07"})
  int release(
      @Parameters(paramLabel = "FILE") Path file,
      @Mixin AcknowledgeOption acknowledge,
      @Mixin DataOption data,
      @Mixin ByOption by,
      @Mixin SignOption sign) {
    String text = Files.text(file);
    Procedure procedure = ProcedureFile.parse(file.toString(), text);
    Release release =
        Given.valid(spec, () -> new Release(procedure, text, acknowledge.all(), by.badge()));
    long n = data.carryOut(release, sign);
    Set<String> known =
        release.acknowledged().stream().map(Acknowledged::finding).collect(Collectors.toSet());
    Release.findings(procedure, data.shop()).stream()
        .filter(f -> !known.contains(f.key()))
        .forEach(f -> out("doubtful, not acknowledged: " + f));
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
                      Json.object(
                          "procedure",
                          r.procedure(),
                          "revision",
                          r.revision(),
                          "entry",
                          r.entry(),
                          "acknowledged",
                          acknowledged(r)))
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
      description = {
        "Print a released procedure's text, unchanged; as JSON with the findings that were",
        "acknowledged at its release."
      },
      footer = {"", "Example:  witnessmark procedure show RAM-210 --revision C"})
  int show(
      @Parameters(paramLabel = "PROCEDURE") String procedure,
      @Option(names = "--revision", description = "Default: the one released last.")
          String revision,
      @Mixin DataOption data,
      @Mixin JsonOption json) {
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
    if (json.wanted()) {
      json.print(
          spec.commandLine().getOut(),
          Json.object(
              "procedure",
              released.procedure(),
              "revision",
              released.revision(),
              "entry",
              released.entry(),
              "acknowledged",
              acknowledged(released),
              "text",
              released.text()));
      return Exit.YES;
    }
    spec.commandLine().getOut().print(released.text());
    spec.commandLine().getOut().flush();
    return Exit.YES;
  }

  private static List<Map<String, Object>> acknowledged(Released released) {
    return released.acknowledged().stream()
        .map(a -> Json.object("finding", a.finding(), "because", a.because()))
        .toList();
  }

  private void out(String line) {
    spec.commandLine().getOut().println(line);
    spec.commandLine().getOut().flush();
  }
}
