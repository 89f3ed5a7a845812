package witnessmark.cli;

import java.io.PrintWriter;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import witnessmark.cli.answer.InForce;
import witnessmark.cli.answer.Json;
import witnessmark.entry.Moments;
import witnessmark.job.Shop;
import witnessmark.report.Table;
import witnessmark.wrench.Enrolments;
import witnessmark.wrench.Standing;
import witnessmark.wrench.Uses;
import witnessmark.wrench.Wrench;

/** Which wrenches are due for calibration. */
@Command(
    name = "due",
    mixinStandardHelpOptions = true,
    description = {
      "List wrenches by when their calibration is due, by date or by operations.",
      "Exit status 1 when one is due, or will be soon."
    },
    footer = {"", "Example:  witnessmark wrench due --within 30"})
final class DueCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Option(names = "--within", defaultValue = "30", description = "Days that are soon (default 30).")
  private int within;

  @Mixin private DataOption data;
  @Mixin private JsonOption json;

  /** A wrench's standing. */
  private record Row(Wrench wrench, Optional<Uses> uses, String state) {}

  @Override
  public Integer call() {
    Shop shop = data.shop();
    InForce force = data.reading(InForce::of);
    Instant now = Moments.now();
    List<Row> rows =
        shop.wrenches().values().stream()
            .map(Enrolments::newest)
            .sorted(Comparator.comparing(Wrench::due))
            .map(w -> row(w, Optional.ofNullable(shop.uses().get(w.serial())), force, now))
            .toList();
    PrintWriter out = spec.commandLine().getOut();
    if (json.wanted()) {
      json.print(out, rows.stream().map(DueCommand::object).toList());
    } else if (rows.isEmpty()) {
      out.println("No wrench is enrolled yet. Enrol one: witnessmark wrench enrol --help");
    } else {
      Table table = new Table("WRENCH", "CERTIFICATE", "DUE", "OPERATIONS", "");
      rows.forEach(
          r ->
              table.add(
                  r.wrench().serial(),
                  r.wrench().certificate().orElse("-"),
                  r.wrench().due().atZone(ZoneOffset.UTC).toLocalDate().toString(),
                  r.uses().map(u -> u.used() + " of " + u.operations()).orElse("not counted"),
                  r.state()));
      out.println(table.toString().stripTrailing());
    }
    out.flush();
    return rows.stream().allMatch(r -> r.state().equals("in force")) ? Exit.YES : Exit.NO;
  }

  private Row row(Wrench wrench, Optional<Uses> uses, InForce force, Instant now) {
    return new Row(wrench, uses, state(wrench, uses, force, now));
  }

  private String state(Wrench wrench, Optional<Uses> uses, InForce force, Instant now) {
    return switch (Standing.of(wrench, uses, now, Duration.ofDays(within))) {
      case IN_FORCE -> "in force";
      case DUE_SOON -> "due soon";
      case NOT_IN_FORCE -> force.of(wrench, now);
    };
  }

  private static Object object(Row row) {
    return Json.object(
        "wrench", row.wrench().serial(),
        "certificate", row.wrench().certificate().orElse(null),
        "due", row.wrench().due().toString(),
        "operations", row.uses().map(Uses::operations).orElse(null),
        "used", row.uses().map(Uses::used).orElse(null),
        "state", row.state());
  }
}
